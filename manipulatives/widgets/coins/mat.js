/** Mat and purse on the screen: laid out, drawn, and what a finger takes of them. */
import { html, put, svg } from "../shared/svg.js";
import { coinOf } from "./state/coinage.js";
import { drawBox, drawCoin, drawSlot, nameFits } from "./drawing.js";
import { makeLying } from "./lying.js";
import { reach } from "./state/places.js";
import { WHOLE, inside, partOf, tableFor } from "./state/table.js";

/**
 * @typedef {import("./state/places.js").Lying} Lying
 * @typedef {import("./hold.js").Taken} Taken
 * @typedef {import("./hold.js").Held} Held
 * @typedef {import("./drawing.js").Look} Look
 * @typedef {import("./state/table.js").Box} Box
 * @typedef {[key: string, left: number | null][]} Left what a purse still holds
 * @typedef {{ x: number, y: number }} Point
 *
 * @typedef {object} Shown what lies there and what may be done with it
 * @property {Lying[]} tray
 * @property {Left} left
 * @property {Look} look
 * @property {(key: string) => string} called what a coin is called
 * @property {string | null} kind picked from the purse
 * @property {number[]} places picked from the tray
 * @property {boolean} several whether several coins can be picked
 * @property {number} counted below how many coins there are the figures of counting on
 *
 * @typedef {ReturnType<typeof makeMat>} Mat
 */

// So near to a coin that is smaller than a finger it is taken all the same.
const FINGER_PX = 24;

/**
 * Make the mat and the purse.
 * @param {HTMLElement} root which shows that a coin is held
 * @param {HTMLElement} body what they lie in, beside or above other things
 */
export function makeMat(root, body) {
  const lying = makeLying();
  const boxes = svg("g");
  const slots = svg("g", { class: "coins-slots" });
  const drawing = svg("svg", { class: "coins-drawing" }, boxes, slots, lying.coins, lying.figures);
  // What is taken is HTML: browsers know touch-action on nothing that is drawn inside an svg.
  const kinds = html("div");
  const handles = html("div", { class: "coins-handles" }, kinds, lying.handles);
  const place = html("div", { class: "coins-place" }, drawing, handles);
  // Pictures of the coins that are held, each above everything else.
  /** @type {Map<Held, SVGElement>} */
  const floating = new Map();
  body.append(place);
  let table = tableFor([], false, { width: 0, height: 0 }, WHOLE);
  // Where coins come from that are new on the mat, or were let go over it.
  /** @type {Point | null} */
  let from = null;
  // The coin of the tray that the key Tab leads to.
  let stop = 0;

  /**
   * Lay mat and purse out for the place that there is, and draw them.
   * @param {Shown} shown
   */
  function layOut({ tray, left, look }) {
    const { money, movable, names } = look;
    const size = { width: place.clientWidth, height: place.clientHeight };
    const part = movable || left.length ? WHOLE : partOf(tray, money);
    const coinsOf = (/** @type {string[]} */ keys) => keys.map((key) => coinOf(money, key));
    const inPurse = coinsOf(left.map(([key]) => key));
    // Without a purse, names that do not fit on the coins have their place where it would be.
    const all = left.length ? inPurse : coinsOf([...new Set(tray.map(({ coin }) => coin))]);
    // Only where it was seen before, which it is not when there was no place yet.
    const beside = table.scale && table.purse ? table.beside : undefined;
    table = tableFor(inPurse, false, size, part, beside);
    const narrow = names && all.some((coin) => !nameFits(coin, { ...look, scale: table.scale }));
    if (narrow) {
      table = tableFor(all, true, size, part, beside);
    }
    const { whole, mat, purse, origin, type, scale } = table;
    // Above other things the mat stays at the top, whatever comes and goes below it.
    const under = part === WHOLE && getComputedStyle(body).flexDirection === "column";
    put(drawing, {
      viewBox: `${whole.x} ${whole.y} ${whole.width} ${whole.height}`,
      preserveAspectRatio: `xMidY${under ? "Min" : "Mid"}`,
    });
    place.style.aspectRatio = `${whole.width} / ${whole.height}`;
    place.style.setProperty("--unit", `${scale}px`);
    const above = under ? 0 : (size.height - whole.height * scale) / 2;
    const before = (size.width - whole.width * scale) / 2;
    handles.style.top = `${above - whole.y * scale}px`;
    handles.style.left = `${before - whole.x * scale}px`;
    boxes.replaceChildren(drawBox("coins-mat", mat));
    if (purse) {
      boxes.append(drawBox("coins-purse", purse));
    }
    for (const group of [lying.coins, lying.figures]) {
      put(group, { transform: `translate(${origin.x} ${origin.y})` });
    }
    lying.handles.style.transform = `translate(${origin.x * scale}px, ${origin.y * scale}px)`;
    const drawn = { ...look, scale };
    slots.replaceChildren(...table.slots.map((box, index) => {
      const tagged = narrow && !nameFits(all[index], drawn);
      return drawSlot(all[index], box, left[index]?.[1] ?? null, drawn, type, tagged);
    }));
    const old = [...kinds.children];
    kinds.replaceChildren(...left.map((_, index) => cell(old[index], table.slots[index])));
    lying.redraw();
  }

  /**
   * @param {Element | undefined} old which may have the focus
   * @param {Box} box
   * @returns {HTMLElement} what is taken of a kind of the purse
   */
  function cell(old, { x, y, width, height }) {
    const made = old instanceof HTMLElement ? old : html("div", { class: "coins-handle" });
    for (const [name, value] of Object.entries({ x, y, width, height })) {
      made.style.setProperty(`--${name}`, String(value));
    }
    return made;
  }

  /**
   * Show what lies there.
   * @param {Shown} shown
   */
  function paint(shown) {
    const look = { ...shown.look, scale: table.scale };
    lying.lay(shown.tray, look, from);
    from = null;
    lying.count(shown.tray, look, shown.counted, table.type);
    paintPurse(shown);
    paintTray(shown);
  }

  /** @param {Shown} shown */
  function paintPurse({ left, look, called, kind }) {
    put(kinds, look.movable && left.length
      ? { "role": "group", "aria-label": "Purse" }
      : { "role": null, "aria-label": null });
    left.forEach(([key, many], index) => {
      const text = slots.children[index].querySelector(".coins-left");
      if (text) {
        text.textContent = String(many);
      }
      slots.children[index].classList.toggle("is-empty", many === 0);
      const element = /** @type {HTMLElement} */ (kinds.children[index]);
      element.hidden = !look.movable;
      element.classList.toggle("is-picked", key === kind);
      put(element, {
        "role": "button",
        "tabindex": 0,
        "aria-label": called(key) + (many === null ? "" : `, ${many} left`),
        "aria-pressed": key === kind,
        "aria-disabled": many === 0,
        "aria-keyshortcuts": index < 9 ? index + 1 : null,
      });
    });
  }

  /** @param {Shown} shown */
  function paintTray({ tray, look, called, places, several }) {
    const pieces = lying.pieces();
    stop = Math.max(0, Math.min(stop, pieces.length - 1));
    const uses = look.movable && pieces.length > 0;
    put(lying.handles, {
      "role": uses ? "listbox" : null,
      "aria-label": uses ? "Tray" : null,
      "aria-multiselectable": uses ? several : null,
      "aria-orientation": uses ? "horizontal" : null,
    });
    pieces.forEach(({ handle }, index) => {
      const picked = places.includes(index);
      handle.hidden = !look.movable;
      handle.classList.toggle("is-picked", picked);
      put(handle, {
        "role": "option",
        "tabindex": index === stop ? 0 : -1,
        "aria-selected": picked,
        "aria-label": called(tray[index].coin),
      });
    });
  }

  /** @param {Point | null} origin where coins come from that are new when it is painted next */
  function begin(origin) {
    from = origin;
  }

  /**
   * What can be taken at a point.
   * @param {Point} point of the drawing
   * @param {Lying[]} tray
   * @param {Left} left
   * @param {Look} look
   * @returns {Taken | null}
   */
  function taken(point, tray, left, { money }) {
    const { origin, scale } = table;
    const coins = tray.map((each) => {
      const middle = { x: origin.x + each.x, y: origin.y + each.y };
      const far = Math.hypot(point.x - middle.x, point.y - middle.y);
      return { key: each.coin, lying: each, middle, far };
    }).reverse();
    const near = coins.filter(({ far }) => far * scale <= FINGER_PX).sort((a, b) => a.far - b.far);
    const coin = coins.find(({ key, far }) => far <= reach(coinOf(money, key))) ?? near[0];
    const slot = table.slots.findIndex((box) => inside(box, point));
    return coin ?? (left[slot] && left[slot][1] !== 0 ? fromPurse(slot, left) : null);
  }

  /**
   * @param {number} index
   * @param {Left} left
   * @returns {Taken} a coin of the purse
   */
  function fromPurse(index, left) {
    const { x, y, width, height } = table.slots[index];
    return { key: left[index][0], lying: null, middle: { x: x + width / 2, y: y + height / 2 } };
  }

  /**
   * Give the focus to a coin of the tray.
   * @param {number} index
   */
  function focusCoin(index) {
    stop = index;
    lying.pieces().forEach(({ handle }, other) => {
      put(handle, { tabindex: other === index ? 0 : -1 });
    });
    lying.pieces()[index].handle.focus({ preventScroll: true });
  }

  /**
   * Give the focus to a kind of the purse.
   * @param {number} index
   */
  function focusKind(index) {
    const element = /** @type {HTMLElement} */ (kinds.children[index]);
    element.focus({ preventScroll: true });
  }

  /**
   * Show a held coin under its pointer. It is a picture of its own, which moves without anything
   * else being painted.
   * @param {import("./hold.js").Hold} hold
   * @param {Look} look
   */
  function float({ thing, last }, look) {
    const { key, grab } = thing;
    const kind = coinOf(look.money, key);
    const half = reach(kind) + 20;
    const scale = drawing.getScreenCTM()?.a ?? 1;
    let picture = floating.get(thing);
    if (!picture) {
      root.classList.add("is-held");
      picture = svg("svg", {
        "class": "coins-floating",
        "aria-hidden": true,
        "viewBox": `${-half} ${-half} ${2 * half} ${2 * half}`,
        "width": 2 * half * scale,
        "height": 2 * half * scale,
      }, drawCoin(kind, { ...look, scale: table.scale, ring: "" }));
      floating.set(thing, picture);
      place.append(picture);
      paintLifted();
    }
    const { left, top } = place.getBoundingClientRect();
    const right = last.clientX - left - (grab.x + half) * scale;
    const down = last.clientY - top - (grab.y + half) * scale;
    picture.style.transform = `translate(${right}px, ${down}px)`;
  }

  /**
   * A coin is held no more.
   * @param {Held} thing
   */
  function land(thing) {
    floating.get(thing)?.remove();
    floating.delete(thing);
    root.classList.toggle("is-held", floating.size > 0);
    paintLifted();
  }

  function paintLifted() {
    const held = [...floating.keys()].map((thing) => thing.lying);
    for (const piece of lying.pieces()) {
      piece.drawn.classList.toggle("is-lifted", held.includes(piece.lying));
    }
  }

  return {
    place, drawing, handles, kinds, table: () => table, pieces: lying.pieces,
    layOut, paint, begin, taken, fromPurse, focusCoin, focusKind, float, land,
  };
}

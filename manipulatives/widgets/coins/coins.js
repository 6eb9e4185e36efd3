/**
 * The coin tray: a purse, a mat, and coins that go from one to the other. What coins are worth,
 * where they may lie and what they can be traded for is decided in tray.js and places.js; here it
 * is kept, changed and told.
 */
import { announce } from "../shared/announce.js";
import { makeKept } from "../shared/kept.js";
import { onKeys } from "../shared/keys.js";
import { html, put } from "../shared/svg.js";
import { coinInWords, coinsInWords, inWriting, spoken } from "./exact/amounts.js";
import { coinOf, currencyOf } from "./exact/coinage.js";
import { makeCoinTools, makePanel, makeTrades } from "./controls.js";
import { holdCoins } from "./hold.js";
import { makeMat } from "./drawing/mat.js";
import { linedUp, nextPlace, nudged, placeNear } from "./exact/places.js";
import { counting, facts, fits, leftIn, sum, traded, trades } from "./tray.js";

/**
 * @typedef {import("./exact/places.js").Lying} Lying
 * @typedef {import("./hold.js").Taken} Taken
 * @typedef {{ x: number, y: number }} Point
 */

const TRAITS = [
  "currency", "purse", "running_total", "writing", "worths", "names", "counts", "photographs",
  "trade", "movable", "ring", "buttons", "panel",
];
/** @type {Record<string, [number, number]>} */
const NUDGES = {
  "Shift+ArrowLeft": [-1, 0],
  "Shift+ArrowRight": [1, 0],
  "Shift+ArrowUp": [0, -1],
  "Shift+ArrowDown": [0, 1],
};
const FULL = "The tray is full.";

/**
 * @param {RenderProps} props
 * @returns {void}
 */
function render({ model, el, signal = new AbortController().signal }) {
  const life = { signal };
  const root = html("div", {
    "class": "kit kit-coins kit-manipulative",
    "role": "group",
    "aria-label": "Coins",
    "data-lm-suppress-shortcuts": "true",
  });
  const body = html("div", { class: "coins-body" });
  const mat = makeMat(root, body);
  const total = html("div", { class: "coins-total" });
  const { tools, allow, sweeper } = makeCoinTools({ undo, reset, lineUp, sweep }, life);
  const { trades: offers, offer } = makeTrades(tradeFor, life);
  const { panel, agree } = makePanel((trait) => model.get(trait), choose, life);
  const side = html("div", { class: "coins-side" }, total, tools, offers, panel);
  body.append(side);
  root.append(html("div", { class: "coins-room" }, body));

  // Where coins come from that are new on the mat, or were let go over it.
  /** @type {Point | null} */
  let from = null;
  /** @type {import("../shared/kept.js").Kept<Lying[]>} */
  const kept = makeKept(model, "tray", root, turn, life);
  root.facts = () => facts(tray(), money(), model.get("purse"));

  const holding = holdCoins({
    drawing: mat.drawing,
    handles: mat.handles,
    traits: () => ({ movable: model.get("movable"), trade: model.get("trade") }),
    table: mat.table,
    taken: (point) => mat.taken(point, tray(), left(), look()),
    focus: ({ key, place }) => (place === null ? mat.focusKind(kindOf(key)) : mat.focusCoin(place)),
    float: (coin, event, grab) => mat.float(coin, event, grab, look()),
    put: putAt,
    back,
    changed,
  }, life);

  let known = { given: null, money: currencyOf("usd") };

  /** @returns {import("./exact/coinage.js").Currency} */
  function money() {
    const given = model.get("currency");
    if (given !== known.given) {
      known = { given, money: currencyOf(given) };
    }
    return known.money;
  }

  /** @returns {Lying[]} what lies there, as far as the currency has such coins */
  function tray() {
    return fits(kept.now(), money()) ? kept.now() : [];
  }

  /** @returns {string[]} */
  function keys() {
    return tray().map(({ coin }) => coin);
  }

  /** @returns {[key: string, left: number | null][]} what the purse still holds */
  function left() {
    return leftIn(model.get("purse"), tray()).filter(([key]) => coinOf(money(), key));
  }

  /**
   * @param {string} key
   * @returns {number} which kind of the purse it is
   */
  function kindOf(key) {
    return left().findIndex(([other]) => other === key);
  }

  /** @returns {import("./drawing/drawing.js").Look} */
  function look() {
    const [worths, names, photographs, movable, ring] =
      ["worths", "names", "photographs", "movable", "ring"].map((trait) => model.get(trait));
    return { money: money(), worths, names, photographs, movable, ring, scale: mat.table().scale };
  }

  /**
   * @param {string} key
   * @returns {string} what a coin is called, as far as its face tells
   */
  function called(key) {
    return coinInWords(coinOf(money(), key), money(), look());
  }

  /**
   * @param {string[]} some
   * @returns {string} which coins these are, as far as their faces tell
   */
  function told(some) {
    return coinsInWords(some, money(), look());
  }

  /**
   * Say what was done, and the total where it is shown.
   * @param {string} sentence
   */
  function tell(sentence) {
    const count = `${tray().length} ${tray().length === 1 ? "coin" : "coins"}`;
    const state = model.get("running_total") ? spoken(sum(keys()), money()) : count;
    announce(root, `${sentence} ${state}.`);
  }

  /** @returns {import("./drawing/mat.js").Shown} what lies there and what may be done with it */
  function shown() {
    return {
      tray: tray(),
      left: left(),
      look: look(),
      called,
      kind: holding.kind(),
      places: holding.places(),
      several: model.get("trade"),
      counted: model.get("counts") === true ? Infinity : Number(model.get("counts")),
    };
  }

  /** Show what lies there. */
  function paint() {
    mat.paint(shown(), from);
    from = null;
    const movable = model.get("movable");
    put(mat.drawing, {
      "role": movable ? null : "img",
      "aria-label": movable ? null : told(keys()),
      "aria-hidden": movable ? true : null,
    });
    total.textContent = inWriting(sum(keys()), money(), model.get("writing"));
    const any = tray().length > 0;
    allow(...kept.uses(), any, any);
    if (!offers.hidden) {
      makeOffers();
    }
  }

  function makeOffers() {
    const picked = holding.places().map((place) => keys()[place]);
    const found = picked.length ? trades(picked, left()) : [];
    const none = picked.length > 1 ? "No coin is worth just that." : "There is nothing smaller.";
    const hint = picked.length ? none : "Tap coins to trade them.";
    offer(found.length ? "Trade for" : hint, found, look());
  }

  /** Lay everything out afresh, and show what is to be shown and nothing else. */
  function dress() {
    const movable = model.get("movable");
    total.hidden = !model.get("running_total");
    tools.hidden = !movable || !model.get("buttons");
    sweeper.hidden = left().length === 0;
    offers.hidden = !movable || !model.get("trade") || left().length === 0;
    panel.hidden = !model.get("panel");
    side.hidden = [total, tools, offers, panel].every(({ hidden }) => hidden);
    agree(look());
    mat.dress(shown());
    paint();
  }

  /**
   * Go to another tray in one step.
   * @param {Lying[]} next
   * @param {Point | null} [origin] where coins come from that were not there
   * @returns {boolean} whether it was another
   */
  function act(next, origin = null) {
    holding.drop();
    from = origin;
    return kept.act(next);
  }

  /**
   * A coin comes to a point of the drawing, or as near as all stay readable.
   * @param {Taken} coin
   * @param {Point} point
   */
  function putAt({ key, place }, point) {
    const { origin } = mat.table();
    const at = { x: point.x - origin.x, y: point.y - origin.y };
    const others = tray().filter((_, other) => other !== place);
    const kind = place === null ? key : keys()[place];
    const next = placeNear(kind, at.x, at.y, others, money());
    if (!next) {
      announce(root, FULL);
    } else if (act([...others, next], at)) {
      mat.focusCoin(others.length);
      tell(`${called(kind)} ${place === null ? "on the tray" : "moved"}.`);
    }
  }

  /**
   * A coin of the purse goes onto the mat by itself.
   * @param {number} index of its kind
   */
  function add(index) {
    const [key, many] = left()[index];
    const next = many === 0 ? null : nextPlace(key, tray(), money());
    if (!next) {
      announce(root, many === 0 ? "There are no more of these." : FULL);
      return;
    }
    const { middle } = mat.fromPurse(index, left());
    const { origin } = mat.table();
    act([...tray(), next], { x: middle.x - origin.x, y: middle.y - origin.y });
    tell(`${called(key)} on the tray.`);
  }

  /** @param {number[]} places of coins that go back into the purse */
  function back(places) {
    const away = places.map((place) => keys()[place]);
    act(tray().filter((_, place) => !places.includes(place)));
    tell(`${away.length === 1 ? called(away[0]) : told(away)} back in the purse.`);
  }

  /** Something was picked, or let go. */
  function changed() {
    paint();
    const kind = holding.kind();
    const picked = kind === null ? holding.places().map((place) => keys()[place]) : [kind];
    if (picked.length) {
      announce(root, `Picked: ${picked.length > 1 ? told(picked) : called(picked[0])}.`);
    }
  }

  /** @param {boolean} begun whether the tray came from outside */
  function turn(begun) {
    if (begun) {
      holding.drop();
      dress();
    } else {
      paint();
    }
  }

  function undo() {
    holding.drop();
    if (kept.undo()) {
      tell("Undone.");
    }
  }

  function reset() {
    holding.drop();
    if (kept.reset()) {
      tell("As it was at first.");
    }
  }

  function sweep() {
    if (act([])) {
      tell("Swept.");
    }
  }

  function lineUp() {
    const next = linedUp(keys(), money());
    if (!next) {
      announce(root, "There is no room to line up.");
    } else if (act(next)) {
      tell(`Lined up: ${told(keys())}.`);
    }
  }

  /** @param {string[]} into what the picked coins become */
  function tradeFor(into) {
    const places = holding.places();
    const away = places.map((place) => tray()[place]);
    const next = traded(tray(), places, into, money());
    if (!next) {
      announce(root, FULL);
      return;
    }
    act(next, { x: away[0].x, y: away[0].y });
    mat.focusCoin(next.length - 1);
    tell(`Traded ${told(away.map(({ coin }) => coin))} for ${told(into)}.`);
  }

  /**
   * @param {string} trait
   * @param {unknown} value
   */
  function choose(trait, value) {
    model.set(trait, value);
    model.save_changes();
    dress();
    if (trait === "counts" && value) {
      lineUp();
    }
  }

  /**
   * Use a key on a coin of the tray.
   * @param {number} place
   * @param {string} key
   * @returns {boolean} whether it means something
   */
  function useCoin(place, key) {
    const order = counting(tray());
    const at = order.indexOf(place);
    /** @type {Record<string, number>} */
    const others = {
      ArrowRight: order[at + 1] ?? place,
      ArrowDown: order[at + 1] ?? place,
      ArrowLeft: order[at - 1] ?? place,
      ArrowUp: order[at - 1] ?? place,
      Home: order[0],
      End: order[order.length - 1],
    };
    if (key in others) {
      mat.focusCoin(others[key]);
      return true;
    }
    switch (key) {
      case "Enter":
      case " ":
        holding.pick({ key: keys()[place], place, middle: tray()[place] });
        return true;
      case "Delete":
      case "Backspace":
        remove(place);
        return true;
      default:
        return key in NUDGES && nudge(place, NUDGES[key]);
    }
  }

  /** @param {number} place of a coin that goes back into the purse, if there is one */
  function remove(place) {
    if (left().length) {
      back([place]);
      if (tray().length) {
        mat.focusCoin(Math.min(place, tray().length - 1));
      } else {
        mat.focusKind(0);
      }
    }
  }

  /**
   * Move a coin a step.
   * @param {number} place
   * @param {[number, number]} way
   * @returns {boolean} true
   */
  function nudge(place, [right, down]) {
    const others = tray().filter((_, other) => other !== place);
    const next = nudged(tray()[place], right, down, others, money());
    if (next && act([...others, next])) {
      mat.focusCoin(others.length);
      tell(`${called(next.coin)} moved.`);
    }
    return true;
  }

  /**
   * Use a key, or what a screen reader does in its place.
   * @param {string} key
   * @param {EventTarget | null} target
   * @returns {boolean} whether it means something
   */
  function use(key, target) {
    if (!model.get("movable") || !(target instanceof Element)) {
      return false;
    }
    if (key === "Escape") {
      return holding.drop();
    }
    if (holding.isHeld()) {
      return false;
    }
    const focused = [...mat.kinds.children].indexOf(target);
    const kind = (key === "Enter" || key === " ") && focused >= 0 ? focused : Number(key) - 1;
    if (left()[kind]) {
      add(kind);
      return true;
    }
    const place = mat.pieces().findIndex(({ handle }) => handle === target);
    return place >= 0 && useCoin(place, key);
  }

  onKeys(root, (key, event) => use(key, event.target), life);
  // A click that no pointer made.
  mat.handles.addEventListener("click", (event) => {
    if (event.detail === 0) {
      use("Enter", event.target);
    }
  }, life);

  for (const name of TRAITS) {
    model.on(`change:${name}`, () => signal.aborted || dress());
  }
  const sizes = new ResizeObserver(() => {
    if (signal.aborted) {
      sizes.disconnect();
    } else {
      dress();
    }
  });
  sizes.observe(mat.place);

  dress();
  el.replaceChildren(root);
}

export default { render };

/** The list of a lesson's rounds: one is chosen, and each can be dragged to another place. */
import { announce } from "../widgets/shared/announce.js";
import { onDrag } from "../widgets/shared/drag.js";
import { onKeys } from "../widgets/shared/keys.js";
import { grip, html, put, svg } from "../widgets/shared/svg.js";

/**
 * @typedef {object} Model
 * @property {(name: string) => any} get
 * @property {(name: string, value: any) => void} set
 * @property {() => void} save_changes
 * @property {(message: object) => void} send
 * @property {(event: string, callback: () => void) => void} on
 * @property {(event: string, callback: () => void) => void} off
 */

/** A press that moves less than this chooses a line; otherwise it drags. In CSS pixels. */
const DRAG_THRESHOLD_PX = 5;

/**
 * Show the list, and let a line be chosen and dragged.
 * @param {{ model: Model, el: HTMLElement, signal?: AbortSignal }} given
 */
function render({ model, el, signal }) {
  const lifetime = { signal: signal ?? new AbortController().signal };
  const id = `kit-rows-${Math.random().toString(36).slice(2)}`;
  const list = html("div", {
    "class": "rows-list",
    "role": "listbox",
    "tabindex": 0,
    "aria-label": model.get("label"),
    "data-lm-suppress-shortcuts": "true",
  });
  const root = html("div", { class: "kit kit-rows" }, list);
  el.append(root);

  const lines = () => /** @type {HTMLElement[]} */ ([...list.children]);
  /** @type {string[]} */
  let rows = [];
  let chosen = 0;

  function show() {
    rows = model.get("rows");
    chosen = model.get("chosen");
    paint();
  }

  function paint() {
    list.replaceChildren(...rows.map((text, place) => html("div", {
      "class": "rows-line",
      "role": "option",
      "id": `${id}-${place}`,
      "aria-selected": place === chosen,
    }, handle(), html("span", {}, `${place + 1}. ${text}`))));
    root.hidden = rows.length === 0;
    put(list, { "aria-activedescendant": rows.length ? `${id}-${chosen}` : null });
  }

  /** @param {number} place */
  function choose(place) {
    if (place !== chosen && place in rows) {
      chosen = place;
      model.set("chosen", place);
      model.save_changes();
      paint();
      lines()[place].scrollIntoView({ block: "nearest" });
    }
  }

  /**
   * Show the new order at once, and tell the kernel of the move.
   * @param {number} place
   * @param {number} to
   */
  function move(place, to) {
    if (!(to in rows)) {
      return;
    }
    const others = rows.filter((_, each) => each !== place);
    rows = [...others.slice(0, to), rows[place], ...others.slice(to)];
    chosen = to;
    model.send({ move: [place, to] });
    paint();
    lines()[to].scrollIntoView({ block: "nearest" });
    announce(el, `${rows[to]} is now number ${to + 1}.`);
  }

  let place = 0, to = 0, from = 0, dragged = false;
  onDrag(list, {
    start(event) {
      const line = /** @type {Element} */ (event.target).closest(".rows-line");
      // A finger scrolls the page, unless it drags the handle.
      const byHandle = /** @type {Element} */ (event.target).closest(".rows-handle");
      if (!line || (event.pointerType === "touch" && !byHandle)) {
        return false;
      }
      list.focus({ preventScroll: true });
      place = lines().indexOf(/** @type {HTMLElement} */ (line));
      to = place;
      from = event.clientY;
      dragged = false;
      return true;
    },
    move(event) {
      dragged ||= Math.abs(event.clientY - from) > DRAG_THRESHOLD_PX;
      if (dragged) {
        to = shift(lines(), place, event.clientY - from);
      }
    },
    end() {
      for (const line of lines()) {
        line.style.transform = "";
        line.classList.remove("is-held");
      }
      if (dragged && to !== place) {
        move(place, to);
      } else {
        choose(place);
      }
    },
  }, lifetime);

  list.addEventListener("click", (event) => {
    const line = /** @type {Element} */ (event.target).closest(".rows-line");
    if (line) {
      choose(lines().indexOf(/** @type {HTMLElement} */ (line)));
    }
  }, lifetime);

  onKeys(list, (key) => {
    /** @type {Record<string, () => void>} */
    const actions = {
      "ArrowUp": () => choose(chosen - 1),
      "ArrowDown": () => choose(chosen + 1),
      "Home": () => choose(0),
      "End": () => choose(rows.length - 1),
      "Shift+ArrowUp": () => move(chosen, chosen - 1),
      "Shift+ArrowDown": () => move(chosen, chosen + 1),
    };
    actions[key]?.();
    return key in actions;
  }, lifetime);

  show();
  model.on("change:rows", show);
  model.on("change:chosen", show);
  lifetime.signal.addEventListener("abort", () => {
    model.off("change:rows", show);
    model.off("change:chosen", show);
  }, { once: true });
}

/**
 * Move the dragged line to the pointer, and make room between the others.
 * @param {HTMLElement[]} lines
 * @param {number} place of the dragged line
 * @param {number} by how far it was dragged, in CSS pixels
 * @returns {number} the place where it would be dropped
 */
function shift(lines, place, by) {
  const held = lines[place];
  const middle = held.offsetTop + held.offsetHeight / 2 + by;
  const others = lines.filter((line) => line !== held);
  const to = others.filter((line) => middle > line.offsetTop + line.offsetHeight / 2).length;
  lines.forEach((line, each) => {
    const makesRoom = Number(each > place && each <= to) - Number(each < place && each >= to);
    line.style.transform = makesRoom ? `translateY(${-makesRoom * held.offsetHeight}px)` : "";
  });
  held.style.transform = `translateY(${by}px)`;
  held.classList.add("is-held");
  return to;
}

/** @returns {HTMLElement} the kit's sign for what can be moved */
function handle() {
  const drawing = svg("svg", { "viewBox": "-12 -12 24 24", "aria-hidden": "true" }, grip(9));
  return html("span", { class: "rows-handle" }, drawing);
}

export default { render };

/** What stands below and beside the mats: the box of blocks, tools, readings, and switches. */
import { ICONS, button, makeSwitches, makeTools } from "../shared/controls.js";
import { grip, html, icon, put, svg } from "../shared/svg.js";
import { drawBlock } from "./drawing.js";
import { PLACES, beside, named, together, traded } from "./state/places.js";
import { SIZES } from "./state/rows.js";
import { some } from "./state/tell.js";

/**
 * @typedef {import("./state/places.js").Place} Place
 * @typedef {{ signal: AbortSignal }} Lifetime
 * @typedef {(place: Place, way: 1 | -1) => boolean} Can whether there is such a trade
 */

const LEFT = "M20 12H5M11 6L5 12L11 18";
const RIGHT = "M4 12H19M13 6L19 12L13 18";
// About how large a block in the box is drawn.
const SOURCE_PX = 44;
const JOIN = "M4 5L10 11M10 5V11H4M20 19L14 13M14 19V13H20";

/** @type {[string, string][]} */
const SWITCHES = [
  ["digits", "Digits"],
  ["numeral", "Number"],
  ["expanded", "Parts"],
  ["zeros", "Zeros"],
  ["words", "Words"],
  ["equation", "Steps"],
];
/** @type {[string, string][]} */
const PAIRS = [["one", "One"], ["compare", "Compare"], ["add", "Add"], ["take", "Take away"]];

/**
 * All that stands below and beside the mats.
 * @param {{
 *   frame: import("../shared/frame.js").Frame,
 *   current: import("./current.js").Current,
 *   mats: import("./mats.js").Mats,
 *   actions: import("./actions.js").Actions,
 *   reading: ReturnType<typeof import("./reading.js").makeReading>,
 *   choose: (trait: string, value: unknown) => void,
 * }} parts of the widget
 */
export function makeControls({ frame, current, mats, actions, reading, choose }) {
  const { get, lifetime } = frame;
  const { box, sources, update: updateBox } = makeBox(actions.tradeAll, lifetime);
  const { tools, join, allow } = makeBlockTools(actions, lifetime);
  const { panel, update } = makePanel(get, choose, actions.layMats, lifetime);
  const shelf = html("div", { class: "blocks-shelf" }, box, tools);
  const side = html("div", { class: "blocks-side" }, reading.root, panel);
  return {
    box,
    sources,
    shelf,
    side,

    /** Show what the traits say. */
    applyTraits() {
      panel.hidden = !get("panel");
      shelf.hidden = !get("movable");
    },

    /**
     * Offer what can be done.
     * @param {boolean[]} uses whether there is something to undo, and to reset
     */
    paint(uses) {
      const mat = current.mat();
      updateBox(mats.columns, current.byButton(), (place, way) =>
        Boolean(traded(mat, actions.active, place, way)) &&
        (way < 0 || place !== mats.columns[0]));
      allow(...uses, Boolean(together(mat)));
      join.hidden = mat.length === 1 || get("pair") !== "add";
      tools.hidden = !get("buttons");
      update(mat.length);
      reading.root.hidden = reading.isEmpty();
      side.hidden = reading.root.hidden && panel.hidden;
    },
  };
}

/**
 * The box that blocks come from, and the trades between two places.
 * @param {(place: Place, way: 1 | -1) => void} trade
 * @param {Lifetime} lifetime
 * @returns {{
 *   box: HTMLElement,
 *   sources: Record<Place, HTMLButtonElement>,
 *   update: (columns: Place[], trades: boolean, can: Can) => void,
 * }} the box; what is dragged out of it; show what is to be shown, and which trades can be made
 */
function makeBox(trade, lifetime) {
  const sources = /** @type {Record<Place, HTMLButtonElement>} */ (
    Object.fromEntries(PLACES.map((place) => [place, html("button", {
      "type": "button", "class": "blocks-source", "aria-label": `Take a ${named(place, 1)}`,
    }, picture(place))])));
  const bridges = PLACES.slice(1).map((smaller) => {
    const larger = /** @type {Place} */ (beside(smaller, 1));
    const [one, ten] = [some(1, larger), some(10, smaller)];
    const up = button(
      [icon(LEFT), html("span", {}, one)], () => trade(smaller, 1), lifetime,
      { "aria-label": `${ten} become ${one}` },
    );
    const down = button(
      [html("span", {}, ten), icon(RIGHT)], () => trade(larger, -1), lifetime,
      { "aria-label": `${one} becomes ${ten}` },
    );
    return { smaller, larger, up, down, bridge: html("div", { class: "blocks-bridge" }, up, down) };
  });
  const parts = PLACES.flatMap((place, index) =>
    [...(index ? [bridges[index - 1].bridge] : []), sources[place]]);
  const box = html("div", { class: "blocks-box" }, ...parts);
  return {
    box,
    sources,
    update(columns, trades, can) {
      put(box, { "data-columns": columns.length });
      for (const place of PLACES) {
        sources[place].hidden = !columns.includes(place);
      }
      for (const { smaller, larger, up, down, bridge } of bridges) {
        bridge.hidden = !trades || !columns.includes(larger);
        put(up, { "aria-disabled": !can(smaller, 1) });
        put(down, { "aria-disabled": !can(larger, -1) });
      }
    },
  };
}

/**
 * @param {Place} place
 * @returns {SVGElement} a block with the sign that it can be moved
 */
function picture(place) {
  const { wide, high } = SIZES[place];
  const size = 1.1 * Math.max(wide, high, 1.7);
  const [x, y] = [(wide - size) / 2, (high - size) / 2];
  // On the front of a thousand, which is to the left and below.
  const off = place === "thousands" ? 1 : 0;
  const at = `translate(${wide / 2 - off} ${high / 2 + off})`;
  const sign = put(grip(0.11 * size), { transform: at });
  const made = svg(
    "svg", { "viewBox": `${x} ${y} ${size} ${size}`, "aria-hidden": true }, drawBlock(place), sign,
  );
  made.style.setProperty("--unit", `${SOURCE_PX / size}`);
  return made;
}

/**
 * Undo, reset, and all blocks on one mat.
 * @param {{ undo: () => void, reset: () => void, join: () => void }} actions
 * @param {Lifetime} lifetime
 * @returns {{ tools: HTMLElement, join: HTMLElement, allow: (...uses: boolean[]) => void }}
 */
function makeBlockTools({ undo, reset, join }, lifetime) {
  const { buttons, allow } = makeTools([
    [ICONS.undo, "Undo", undo],
    [ICONS.reset, "Reset", reset],
    [JOIN, "Put together", join],
  ], lifetime);
  return { tools: html("div", { class: "blocks-tools" }, ...buttons), join: buttons[2], allow };
}

/**
 * The switches of free play.
 * @param {(trait: string) => any} get
 * @param {(trait: string, value: unknown) => void} choose
 * @param {(pair: string) => void} lay one mat, or two for what
 * @param {Lifetime} lifetime
 * @returns {{ panel: HTMLElement, update: (mats: number) => void }}
 */
function makePanel(get, choose, lay, lifetime) {
  const { tiles, update } = makeSwitches(SWITCHES, get, choose, lifetime);
  const places = PLACES.map((_, index) => {
    const label = { "aria-label": `${index + 1} column${index ? "s" : ""}` };
    return button([String(index + 1)], () => choose("places", index + 1), lifetime, label);
  });
  const pairs = PAIRS.map(([pair, name]) => button([name], () => lay(pair), lifetime));
  return {
    panel: html(
      "div", { class: "blocks-panel" },
      html("div", { class: "blocks-tiles" }, ...tiles),
      html("div", { class: "blocks-choices" }, "Columns", html("div", {}, ...places)),
      html("div", { class: "blocks-choices" }, "Mats", html("div", {}, ...pairs)),
    ),
    update(mats) {
      update();
      places.forEach((each, index) => put(each, { "aria-pressed": get("places") === index + 1 }));
      PAIRS.forEach(([pair], index) => {
        const now = mats === 1 ? "one" : get("pair");
        put(pairs[index], { "aria-pressed": pair === now });
      });
    },
  };
}

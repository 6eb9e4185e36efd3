/** What stands beside the paper: hint, readings, tools, and the switches of free play in groups. */
import { ICONS, button, makeSwitches, makeTools } from "../shared/controls.js";
import { html, icon, put, svg } from "../shared/svg.js";
import { pathOf } from "./drawing.js";
import { inWords } from "./state/names.js";
import { readyShapes } from "./state/ready.js";
import { teachersNote } from "./state/words.js";
import { LABELS } from "./readings.js";

/**
 * @typedef {import("./state/paper.js").Grid} Grid
 * @typedef {import("./state/paper.js").Shape} Shape
 * @typedef {{ signal: AbortSignal }} Lifetime
 * @typedef {import("./actions.js").Actions} Actions
 */

const LINES = {
  clear: "M5 7H19M9 7V4H15V7M7 7L8 20H16L17 7",
  add: "M3 17H9M15 17H21M9 17A3 3 0 1 0 15 17A3 3 0 1 0 9 17M12 2V10M8 6H16",
  remove: "M3 17H9M15 17H21M9 17A3 3 0 1 0 15 17A3 3 0 1 0 9 17M8 6H16",
  stroke: "M4 20L5 15L15 5L19 9L9 19ZM13 7L17 11",
  turn: "M19 12A7 7 0 1 1 15 5.7M15 2V6.5H10.5",
  flip: "M12 3V21M9 7L4 17H9ZM15 7L20 17H15Z",
};
/** @type {[Grid, string][]} */
const PAPERS = [["square", "Squares"], ["triangle", "Triangles"], ["plain", "Plain"]];
const DEFINITIONS = [["exclusive", "1 pair"], ["inclusive", "1 or 2"]];

/**
 * All that stands beside the paper.
 * @param {{
 *   frame: import("../shared/frame.js").Frame,
 *   work: import("./actions.js").Work,
 *   actions: Actions,
 *   traits: () => import("./polygon.js").Traits,
 *   choose: (trait: string, value: unknown) => void,
 *   trace: (shape: Shape | null) => void,
 * }} parts of the widget; trace, take a shape as the guide
 */
export function makeControls({ frame: { get, lifetime }, work, actions, traits, choose, trace }) {
  const { hand, state, shape, cutting, isCutting, view: { hint, readings } } = work;
  const { tools, allow } = makeDrawTools(actions, lifetime);
  const stroke = makeStroke(actions.drawStroke, lifetime);
  const { panel, update, note, open } = makePanel(get, choose, { ...actions, trace }, lifetime);
  const parts = [hint, readings, stroke, tools, panel];
  const side = html("div", { class: "polygon-side" }, ...parts);
  return {
    side,
    open,

    /** Show what the traits say. */
    applyTraits() {
      const now = traits();
      hint.hidden = !now.hints;
      tools.hidden = !now.movable || !now.buttons;
      stroke.hidden = !now.follow || !now.guide || !now.movable;
      panel.hidden = !now.panel;
      update();
    },

    /** The readings are written by now: where there is nothing, the paper has all the room. */
    hideWhenEmpty() {
      side.hidden = parts.every(({ hidden }) => hidden);
    },

    /** Offer what can be done. */
    paint() {
      const { points, curve, cuts } = shape();
      const { picked } = hand;
      const [undone, begun] = state.uses();
      const [more, less] = isCutting()
        ? [false, Boolean(cuts) || cutting.begun()]
        : [picked !== null && !curve, picked !== null];
      allow(undone || cutting.begun(), begun, points.length > 0, more, less);
      put(stroke, { "aria-disabled": !actions.nextStroke() });
    },

    /**
     * Write what a teacher may say of the shape, where free play is.
     * @param {import("./state/look.js").Look} look
     */
    note(look) {
      const now = traits();
      if (now.panel) {
        note(teachersNote(shape(), now.grid, now, look));
      }
    },
  };
}

/**
 * The tools.
 * @param {Actions} actions
 * @param {Lifetime} lifetime
 * @returns {{ tools: HTMLElement, allow: (...uses: boolean[]) => void }} the buttons, and whether
 *   there is something to do for each, in that order
 */
function makeDrawTools({ undo, reset, clear, add, remove }, lifetime) {
  const { buttons, allow } = makeTools([
    [ICONS.undo, "Undo", undo],
    [ICONS.reset, "Reset", reset],
    [LINES.clear, "Clear", clear],
    [LINES.add, "Add", add],
    [LINES.remove, "Remove", remove],
  ], lifetime);
  return { tools: html("div", { class: "polygon-tools" }, ...buttons), allow };
}

/**
 * The button that draws a guide stroke by stroke.
 * @param {() => void} press
 * @param {Lifetime} lifetime
 * @returns {HTMLButtonElement}
 */
function makeStroke(press, lifetime) {
  const look = { class: "kit-button polygon-stroke" };
  return button([icon(LINES.stroke), "Next stroke"], press, lifetime, look);
}

/**
 * The switches of free play. One group is open at a time, or none.
 * @param {(trait: string) => any} get what a trait is now
 * @param {(trait: string, value: unknown) => void} choose
 * @param {{
 *   turn: () => void,
 *   flip: () => void,
 *   share: (many: number) => void,
 *   trace: (shape: Shape | null) => void,
 * }} actions turn, flip, share into so many, and take a shape as the guide
 * @param {Lifetime} lifetime
 * @returns {{
 *   panel: HTMLElement,
 *   update: () => void,
 *   note: (said: string | null) => void,
 *   open: (name: string) => void,
 * }} the panel; update it from the traits; tell where books differ; open a group
 */
function makePanel(get, choose, { turn, flip, share, trace }, lifetime) {
  const shown = makeSwitches(
    [
      .../** @type {[string, string][]} */ (Object.entries({ ...LABELS, parallel: "Parallel" })),
      ["count:sides", "Count sides"],
      ["count:vertices", "Count corners"],
    ],
    (name) => (name.includes(":") ? name === `count:${get("count")}` : get("show").includes(name)),
    (name, on) => (name.includes(":")
      ? choose("count", on ? name.slice(6) : "")
      : choose("show", Object.keys(LABELS).filter((key) =>
        (key === name ? on : get("show").includes(key))))),
    lifetime,
  );
  const settings = makeSwitches(
    [["tool", "Cut"], ["hints", "Hints"]],
    (name) => get(name) === true || get(name) === "cut",
    (name, on) => choose(name, name === "hints" ? on : (on ? "cut" : "draw")),
    lifetime,
  );
  const told = shown.tiles[Object.keys(LABELS).indexOf("shares")];
  const papers = PAPERS.map(([grid, name]) => button([name], () => choose("grid", grid), lifetime));
  const caption = html("span");
  const definitions = DEFINITIONS.map(([definition, name]) =>
    button([name], () => choose("trapezoid", definition), lifetime));
  const ready = html("div", { class: "polygon-ready" });
  const remark = html("p", { class: "polygon-note" });
  const shares = [2, 3, 4].map((many) => button([`${many}`], () => share(many), lifetime, {
    "aria-label": `Cut into ${many} equal shares`,
  }));
  const ways = html(
    "div", { class: "polygon-row" },
    button([icon(LINES.turn), "Turn"], turn, lifetime),
    button([icon(LINES.flip), "Flip"], flip, lifetime),
  );
  /** @type {[string, HTMLElement][]} */
  const groups = [
    ["Show", html("div", { class: "polygon-tiles" },
      ...shown.tiles.filter((each) => each !== told))],
    ["Shapes", html("div", { class: "polygon-group" }, ready, ways)],
    ["Cut", html("div", { class: "polygon-group" },
      html("div", { class: "polygon-row" }, settings.tiles[0], told),
      html("div", { class: "polygon-row" }, html("span", {}, "Equal shares"), ...shares))],
    ["Paper", html("div", { class: "polygon-group" },
      html("div", { class: "polygon-row" }, ...papers),
      html("div", { class: "polygon-row" }, caption, ...definitions),
      html("div", { class: "polygon-row" }, settings.tiles[1]))],
  ];
  let opened = "";
  const tabs = groups.map(([name]) =>
    button([name], () => open(name === opened ? "" : name), lifetime));
  let drawn = "";

  /** @param {string} name of the group that is open from now on */
  function open(name) {
    opened = name;
    groups.forEach(([each, group], index) => {
      group.hidden = each !== name;
      put(tabs[index], { "aria-expanded": each === name });
    });
    remark.hidden = !name || !remark.textContent;
  }

  open("");
  return {
    panel: html(
      "div", { class: "polygon-panel" },
      html("div", { class: "polygon-row polygon-tabs" }, ...tabs),
      ...groups.map(([, group]) => group), remark,
    ),
    open,
    note(said) {
      remark.textContent = said;
      remark.hidden = !opened || !said;
    },
    update() {
      shown.update();
      settings.update();
      /** @type {Grid} */
      const grid = get("grid");
      PAPERS.forEach(([name], index) => put(papers[index], { "aria-pressed": name === grid }));
      if (drawn !== grid) {
        drawn = grid;
        ready.replaceChildren(...Object.entries(readyShapes(grid)).map(([name, shape]) =>
          readyButton(name, shape)));
      }
      for (const each of ready.children) {
        const guide = JSON.stringify(get("guide"));
        put(each, { "aria-pressed": /** @type {HTMLElement} */ (each).dataset.shape === guide });
      }
      caption.textContent = `A ${inWords("trapezoid", { vocabulary: get("vocabulary") })} has`;
      DEFINITIONS.forEach(([definition], index) =>
        put(definitions[index], {
          "aria-pressed": definition === get("trapezoid"),
          "aria-label": `${definitions[index].textContent} pairs of parallel sides`,
        }));
    },
  };

  /**
   * @param {string} name
   * @param {Shape} shape
   * @returns {HTMLElement}
   */
  function readyButton(name, shape) {
    const picture = svg(
      "svg", { "viewBox": "-20 -20 840 840", "aria-hidden": true },
      svg("path", { d: pathOf(shape, get("grid")) }),
    );
    const called = inWords(name, { vocabulary: get("vocabulary") });
    const text = JSON.stringify(shape);
    return button(
      [picture], () => trace(JSON.stringify(get("guide")) === text ? null : shape), lifetime,
      { "aria-label": `Guide: ${called}`, "data-shape": text },
    );
  }
}

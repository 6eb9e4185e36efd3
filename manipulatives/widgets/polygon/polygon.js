/**
 * The polygon drawer: paper to put points on, with readings, tools and switches beside it. What is
 * true of a shape and what can be done with it is worked out in state/; here it is shown.
 */
import { makeFrame } from "../shared/frame.js";
import { html, put } from "../shared/svg.js";
import { makeActions } from "./actions.js";
import { makeControls } from "./controls.js";
import { makeCutting } from "./cutting.js";
import { makeSheet } from "./drawing.js";
import { holdPoints } from "./hold.js";
import { useInput } from "./input.js";
import { makePen } from "./pen.js";
import { facts } from "./state/facts.js";
import { converted } from "./state/moves.js";
import { makeView } from "./view.js";

/**
 * @typedef {import("./state/paper.js").Grid} Grid
 * @typedef {import("./state/paper.js").Shape} Shape
 *
 * @typedef {object} Traits what the paper shows and obeys, each described in polygon.py
 * @property {Grid} grid
 * @property {string[]} show
 * @property {string} count
 * @property {Shape | null} guide
 * @property {boolean} follow
 * @property {"draw" | "cut"} tool
 * @property {string} vocabulary
 * @property {string} trapezoid
 * @property {boolean} hints
 * @property {boolean} movable
 * @property {boolean} show_points
 * @property {boolean} buttons
 * @property {boolean} panel
 */

const TRAITS = [
  "grid", "show", "count", "guide", "follow", "tool", "vocabulary", "trapezoid", "hints", "movable",
  "show_points", "buttons", "panel",
];
// Where there is breadth, a group of switches is open from the beginning.
const WIDE_PX = 640;

/**
 * @param {RenderProps} props
 * @returns {void}
 */
function render(props) {
  const frame = makeFrame(props, "polygon", "Shape on paper", TRAITS);
  const { root, lifetime, get } = frame;
  /** @type {() => Traits} */
  const traits = frame.traits;
  /** @type {import("./actions.js").Hand} */
  const hand = { picked: null, stop: 0, pen: { x: 400, y: 400 }, said: "" };
  const sheet = makeSheet();
  /** @type {import("../shared/state/undoable.js").Undoable<Shape>} */
  const state = frame.undoable("shape", stateChanged);
  const shape = state.now;
  const grid = () => /** @type {Grid} */ (get("grid"));
  const isCutting = () => get("tool") === "cut" && get("movable");
  const cutting = makeCutting(sheet, () => ({ shape: shape(), grid: grid() }));
  const view = makeView({
    frame, hand, sheet, cutting, shape, traits, isCutting, painted, paintTools,
  });
  const work = {
    hand, sheet, cutting, state, shape, grid, isCutting, isHeld, drop, view,
    guide: () => traits().guide,
  };
  const actions = makeActions(work);
  const pen = makePen(work, actions, () => view.paintPoints(true));
  root.facts = () => facts(shape(), grid(), traits(), traits().guide);
  const controls = makeControls({ frame, work, actions, traits, choose, trace });
  const holding = holdPoints({ sheet, grid, shape, slide: state.slide, ...actions }, lifetime);

  function isHeld() {
    return holding.isHeld();
  }

  /** @param {boolean} fromOutside whether the shape came from outside */
  function stateChanged(fromOutside) {
    if (fromOutside) {
      drop();
    }
    view.paint();
  }

  /** @param {import("./state/look.js").Look} look */
  function painted(look) {
    pen.paint(!get("movable"));
    cutting.show(isCutting());
    controls.paint();
    controls.note(look);
  }

  function paintTools() {
    controls.paint();
  }

  /** Lay everything out afresh, and show what the traits say and nothing else. */
  function applyTraits() {
    const now = traits();
    if (!now.movable || isCutting()) {
      drop();
    }
    cutting.drop();
    sheet.layDots(now.grid);
    sheet.fit();
    put(root, { "data-grid": now.grid, "data-tool": isCutting() ? "cut" : "draw" });
    controls.applyTraits();
    view.paint();
    controls.hideWhenEmpty();
  }

  /** @returns {Shape | null} what the shape was when a point was taken that is held */
  function drop() {
    hand.picked = null;
    hand.said = "";
    cutting.drop();
    return holding.drop();
  }

  /** @param {Shape | null} guide to trace, or to draw stroke by stroke */
  function trace(guide) {
    frame.set({ guide, follow: guide !== null });
    applyTraits();
  }

  /**
   * @param {string} trait
   * @param {unknown} value
   */
  function choose(trait, value) {
    const from = grid();
    frame.set({ [trait]: value }, false);
    if (trait === "grid") {
      const to = grid();
      const { guide } = traits();
      drop();
      if (from !== to) {
        frame.set(guide ? { guide: converted(guide, from, to) } : {}, false);
        state.act(converted(shape(), from, to));
      }
    }
    frame.set({});
    applyTraits();
  }

  useInput({ frame, work, actions, pen });
  frame.start({
    body: html("div", { class: "polygon-body" }, sheet.frame, controls.side),
    applyTraits,
    sized: [sheet.frame],
    fit() {
      sheet.fit();
      view.paint();
    },
  });
  if (root.clientWidth >= WIDE_PX) {
    controls.open("Show");
  }
}

export default { render };

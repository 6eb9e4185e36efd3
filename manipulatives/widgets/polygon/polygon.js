/**
 * The polygon drawer: paper to put points on, with readings, tools and switches beside it. What is
 * true of a shape is worked out in facts.js and what can be done with it in moves.js; here it is
 * shown, kept and told.
 */
import { announce } from "../shared/announce.js";
import { makeKept } from "../shared/kept.js";
import { onKeys } from "../shared/keys.js";
import { html, pointIn, put } from "../shared/svg.js";
import { makeActs } from "./acts/acts.js";
import { makeDrawTools, makePanel, makeStroke } from "./controls.js";
import { makeCutting } from "./acts/cutting.js";
import { makeSheet } from "./drawing/drawing.js";
import { called, facts } from "./exact/facts.js";
import { holdPoints } from "./acts/hold.js";
import { looked } from "./exact/look.js";
import { NOTHING, converted, flipped, turned } from "./acts/moves.js";
import { outlineOf } from "./exact/outline.js";
import { nearest, place, same } from "./exact/paper.js";
import { makePen } from "./acts/pen.js";
import { makeReadings, write } from "./drawing/readings.js";
import { pictureOf, placeName, pointName, whatNext } from "./words/tell.js";
import { remark, teachersNote } from "./words/words.js";

/**
 * @typedef {import("./exact/paper.js").Grid} Grid
 * @typedef {import("./exact/paper.js").Shape} Shape
 * @typedef {import("./exact/paper.js").Spot} Spot
 * @typedef {import("./acts/hold.js").Taken} Taken
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
function render({ model, el, signal = new AbortController().signal }) {
  const life = { signal };
  /** @type {import("./acts/acts.js").Desk["hand"]} */
  const hand = { picked: null, stop: 0, pen: { x: 400, y: 400 }, said: "" };
  // One look at the shape, what is true of it, and which readings have just changed.
  let look = looked(NOTHING, "plain");
  /** @type {Facts} */
  let found = {};
  let changes = "";

  const sheet = makeSheet();
  const cutting = makeCutting(sheet, () => ({ shape: shape(), grid: grid() }));
  const desk = {
    hand, sheet, cutting, shape, grid, isCutting, paint, paintTools, change, refuse, say, focusOn,
    guide: () => traits().guide,
  };
  const acts = makeActs(desk);
  const pen = makePen(desk, acts, () => paintPoints(true));
  const { readings, read } = makeReadings();
  const hint = html("p", { class: "polygon-hint" });
  const { tools, allow } = makeDrawTools({ ...acts, undo, reset }, life);
  const stroke = makeStroke(acts.drawStroke, life);
  const { panel, agree, note, open } = makePanel((trait) => model.get(trait), choose, {
    share: acts.share,
    trace,
    turn: () => change(turned(shape(), grid()), "Turned."),
    flip: () => change(flipped(shape(), grid()), "Turned over."),
  }, life);
  const side = html("div", { class: "polygon-side" }, hint, readings, stroke, tools, panel);
  const body = html("div", { class: "polygon-body" }, sheet.frame, side);
  const root = html("div", {
    "class": "kit kit-polygon kit-manipulative",
    "role": "group",
    "aria-label": "Shape on paper",
    "data-lm-suppress-shortcuts": "true",
  }, html("div", { class: "polygon-room" }, body));
  /** @type {import("../shared/kept.js").Kept<Shape>} */
  const kept = makeKept(model, "shape", root, (begun) => {
    if (begun) {
      drop();
    }
    paint();
  }, life);
  root.facts = () => facts(shape(), grid(), traits(), traits().guide);
  const holding = holdPoints({
    sheet,
    grid,
    shape,
    tap: acts.tap,
    taken({ index, added }) {
      hand.stop = added ? hand.stop : index;
      hand.said = "";
      focusOn(added ? null : index);
    },
    slide: (next) => kept.slide(next),
    settle(was, { index, added }) {
      hand.picked = null;
      if (kept.settle(was)) {
        hand.stop = index;
        focusOn(index);
        tell(added ? "A new point." : `${pointName(shape(), index)}.`);
      }
    },
  }, life);

  /** @returns {Traits} what the paper shows and obeys */
  function traits() {
    return /** @type {any} */ (Object.fromEntries(TRAITS.map((name) => [name, model.get(name)])));
  }

  function grid() {
    return /** @type {Grid} */ (model.get("grid"));
  }

  function shape() {
    return kept.now();
  }

  function isCutting() {
    return model.get("tool") === "cut" && model.get("movable");
  }

  /** Show the shape. */
  function paint() {
    const now = traits();
    const { points } = shape();
    const drawing = now.movable && !isCutting();
    look = looked(shape(), now.grid);
    const { picked } = hand;
    hand.picked = picked !== null && picked < points.length ? picked : null;
    sheet.paint({
      shape: shape(),
      grid: now.grid,
      guide: now.guide,
      show: now.show,
      count: now.count,
      look,
      movable: drawing,
      pointed: now.show_points && !isCutting(),
      picked: hand.picked,
    });
    found = facts(shape(), now.grid, now, now.guide, look);
    changes = read(now.show, found, called(shape(), now.grid, now, look));
    write(hint, hinted(now));
    paintPoints(drawing);
    pen.paint(!now.movable);
    cutting.show(isCutting());
    paintTools();
    if (now.panel) {
      note(teachersNote(shape(), now.grid, now, look));
    }
  }

  function paintTools() {
    const { points, curve, cuts } = shape();
    const { picked } = hand;
    const [undone, begun] = kept.uses();
    const [more, less] = isCutting()
      ? [false, Boolean(cuts) || cutting.begun()]
      : [picked !== null && !curve, picked !== null];
    allow(undone || cutting.begun(), begun, points.length > 0, more, less);
    put(stroke, { "aria-disabled": !acts.nextStroke() });
  }

  /** @param {boolean} movable */
  function paintPoints(movable) {
    const elements = sheet.points();
    hand.stop = Math.min(hand.stop, Math.max(0, elements.length - 1));
    elements.forEach((element, index) => {
      const now = movable ? {
        "role": "button",
        "tabindex": index === hand.stop ? 0 : -1,
        "aria-label": `${pointName(shape(), index)}, ${placeName(shape().points[index], grid())}`,
        "aria-pressed": index === hand.picked,
      } : { "role": null, "tabindex": null, "aria-label": null, "aria-pressed": null };
      if (element.dataset.is !== JSON.stringify(now)) {
        element.dataset.is = JSON.stringify(now);
        put(element, now);
      }
    });
    put(sheet.handles, { "aria-hidden": movable ? null : true });
    put(sheet.drawing, { "aria-label": pictureOf(shape(), grid()) });
  }

  /** Lay everything out afresh, and show what is to be shown and nothing else. */
  function dress() {
    const now = traits();
    if (!now.movable || isCutting()) {
      drop();
    }
    cutting.drop();
    sheet.layDots(now.grid);
    sheet.fit();
    put(root, { "data-grid": now.grid, "data-tool": isCutting() ? "cut" : "draw" });
    hint.hidden = !now.hints;
    tools.hidden = !now.movable || !now.buttons;
    stroke.hidden = !now.follow || !now.guide || !now.movable;
    panel.hidden = !now.panel;
    agree();
    paint();
    side.hidden = [hint, readings, tools, stroke, panel].every(({ hidden }) => hidden);
  }

  /**
   * What is said below the paper: the newest first, then what is wrong, then what to do.
   * @param {Traits} now
   * @returns {string}
   */
  function hinted(now) {
    if (hand.said || hand.picked !== null) {
      return hand.said || "Now tap where the point goes.";
    }
    const remarked = remark(shape(), now.grid, now, look);
    if (remarked || !now.movable) {
      return remarked ?? "";
    }
    if (isCutting()) {
      return cutting.points().length ? "Tap an edge where a cut begins." : "Draw a shape to cut.";
    }
    if (found.traced) {
      return "Traced: it is the guide.";
    }
    return whatNext(shape());
  }

  /** @param {string} sentence */
  function say(sentence) {
    announce(root, sentence);
  }

  /**
   * Say what was done, what is wrong, and which readings that are shown have changed.
   * @param {string} sentence
   */
  function tell(sentence) {
    const now = traits();
    const more = now.hints && !hand.said ? remark(shape(), now.grid, now, look) : null;
    say([sentence, more, changes].filter(Boolean).join(" "));
  }

  /**
   * Show and say why nothing was done.
   * @param {string} sentence
   */
  function refuse(sentence) {
    hand.said = sentence;
    write(hint, sentence);
    say(sentence);
  }

  /**
   * Go to another shape in one step, or say why not.
   * @param {Shape | string} next
   * @param {string} sentence what is said then
   * @param {string} [shown] what stands below the paper then
   */
  function change(next, sentence, shown = "") {
    if (typeof next === "string") {
      refuse(next);
    } else if (!holding.isHeld()) {
      hand.said = shown;
      hand.picked = null;
      cutting.drop();
      if (kept.act(next)) {
        tell(sentence);
      } else {
        paint();
      }
    }
  }

  /** @returns {Shape | null} what the shape was when a point was taken that is held */
  function drop() {
    hand.picked = null;
    hand.said = "";
    cutting.drop();
    return holding.drop();
  }

  /** @param {number | null} index */
  function focusOn(index) {
    const element = index === null ? sheet.pen : sheet.points()[index];
    if (element && !element.hidden) {
      element.focus({ preventScroll: true });
    }
  }

  function undo() {
    if (cutting.drop()) {
      paint();
    } else if (!holding.isHeld()) {
      drop();
      if (kept.undo()) {
        tell("Undone.");
      }
    }
  }

  function reset() {
    drop();
    if (kept.reset()) {
      tell("As it was at first.");
    }
  }

  /** @param {Shape | null} guide to trace, or to draw stroke by stroke */
  function trace(guide) {
    model.set("guide", guide);
    choose("follow", guide !== null);
  }

  /**
   * @param {string} trait
   * @param {unknown} value
   */
  function choose(trait, value) {
    const from = grid();
    model.set(trait, value);
    if (trait === "grid") {
      const to = grid();
      const { guide } = traits();
      if (guide && from !== to) {
        model.set("guide", converted(guide, from, to));
      }
      drop();
      if (from !== to) {
        kept.act(converted(shape(), from, to));
      }
    }
    model.save_changes();
    dress();
  }

  onKeys(root, (key, event) => {
    if (!model.get("movable") || !(event.target instanceof HTMLElement)) {
      return false;
    }
    if (key === "Escape") {
      const any = hand.picked !== null || cutting.begun() || hand.said !== "";
      const was = drop();
      if (was) {
        kept.slide(was);
      }
      paint();
      return any || was !== null;
    }
    if (holding.isHeld()) {
      return false;
    }
    const index = sheet.points().indexOf(event.target);
    return event.target === sheet.pen ? pen.key(key) : index >= 0 && pen.pointKey(index, key);
  }, life);

  sheet.drawing.addEventListener("click", (event) => {
    if (model.get("movable")) {
      acts.tapPaper(pointIn(sheet.drawing, event));
    }
  }, life);

  // A click that no pointer made comes from a screen reader.
  sheet.handles.addEventListener("click", (event) => {
    const index = event.target instanceof HTMLElement ? sheet.points().indexOf(event.target) : -1;
    if (event.detail === 0 && index >= 0 && model.get("movable")) {
      acts.tap({ index, added: false });
    }
  }, life);

  // Where a mouse or pen is over the paper, the side that would come next is seen.
  sheet.drawing.addEventListener("pointermove", (event) => {
    const { points, closed } = shape();
    if (event.pointerType === "touch" || !model.get("movable") || isCutting()) {
      return;
    }
    const point = nearest(pointIn(sheet.drawing, event), grid());
    const next = { points: [...points, point], closed: false };
    const wrong = points.length > 1 && outlineOf(next, grid()).meetings.length > 0 &&
      !same(point, points[0]);
    sheet.preview(closed || hand.picked !== null ? [] : [...points.slice(-1), point]
      .map((each) => place(each, grid())), wrong);
  }, life);
  sheet.drawing.addEventListener("pointerleave", () => cutting.begun() || sheet.preview([], false),
    life);

  for (const name of TRAITS) {
    model.on(`change:${name}`, () => signal.aborted || dress());
  }
  const sizes = new ResizeObserver(() => {
    if (signal.aborted) {
      sizes.disconnect();
    } else {
      sheet.fit();
      paint();
    }
  });
  sizes.observe(sheet.frame);

  el.replaceChildren(root);
  if (root.clientWidth >= WIDE_PX) {
    open("Show");
  }
  dress();
}

export default { render };

/**
 * The column board: a sum on squared paper, which is shown step by step or written by pupils. What
 * the steps are is worked out in Python; what is written means is decided in written.js.
 */
import { makeFrame } from "../shared/frame.js";
import { html, put } from "../shared/svg.js";
import { makeActions } from "./actions.js";
import { makeControls } from "./controls.js";
import { makeCurrent } from "./current.js";
import { inSigns } from "./describe.js";
import { makeGrid } from "./grid.js";
import { makeLine } from "./line.js";
import { makeStrip } from "./strip.js";
import { makeVerdicts } from "./verdicts.js";
import { blank, blocksOf, facts, written } from "./written.js";

/** @typedef {import("./written.js").Sum} Sum */

const TRAITS = [
  "headings", "marks", "blocks", "vocabulary", "steps", "step", "mode", "writable", "buttons",
  "panel",
];

/**
 * @param {RenderProps} props
 * @returns {void}
 */
function render(props) {
  const frame = makeFrame(props, "columns", "Column board", TRAITS);
  const { root, lifetime, get, say } = frame;
  /** @type {import("../shared/state/undoable.js").Undoable<Sum>} */
  const state = frame.undoable("sum", stateChanged);
  const current = makeCurrent(get, state);
  root.facts = () => facts(current.shown());
  const verdicts = makeVerdicts(state);
  const actions = makeActions({ frame, state, square, verdicts: verdicts.found, paint });
  const grid = makeGrid({ type: actions.type, check: () => actions.check(true) }, lifetime);
  const line = makeLine();
  const strip = makeStrip();
  const controls = makeControls({ frame, current, actions, strip: strip.element, go, choose });
  const paper = html("div", { class: "columns-paper" }, grid.element);

  function square() {
    return grid.current();
  }

  /** @param {boolean} fromOutside whether the sum came from outside */
  function stateChanged(fromOutside) {
    if (fromOutside) {
      verdicts.found.clear();
      applyTraits();
    } else {
      verdicts.forget();
      paint();
    }
  }

  /** Show what is written, and what stands for it. */
  function paint() {
    const showing = current.isShowing();
    const sum = current.shown();
    const steps = current.steps();
    const step = current.step() ? steps[current.step() - 1] : null;
    const at = showing ? step : null;
    grid.paint(sum, {
      verdicts: showing ? new Map() : verdicts.found, column: at?.column ?? null,
    });
    if (!strip.element.hidden) {
      const all = showing ? steps.map(({ blocks }) => blocks) : [];
      strip.paint(sum, at?.blocks ?? blocksOf(sum), all);
    }
    if (!line.element.hidden) {
      line.paint(sum, showing ? written(blank(sum), steps) : sum);
    }
    controls.paint(sum.answer.some((digit) => digit !== null), state.uses());
  }

  /** Show what the traits say, and nothing else. */
  function applyTraits() {
    const [headings, marks, vocabulary] = ["headings", "marks", "vocabulary"].map(get);
    const showing = current.isShowing();
    const open = current.isOpen();
    const sum = state.now();
    put(root, { "data-mode": get("mode"), "data-form": sum.form });
    grid.build(sum, { headings, marks, below: vocabulary === "uk", open });
    root.style.setProperty("--across", String(grid.size.across));
    root.style.setProperty("--down", String(grid.size.down));
    root.classList.toggle("is-open", open);
    line.element.hidden = sum.form !== "line" || (!showing && !sum.jumps.length);
    strip.element.hidden = !get("blocks");
    controls.applyTraits();
    paint();
  }

  /**
   * Go a step on or back.
   * @param {number} way
   */
  function go(way) {
    const next = Math.max(0, Math.min(current.steps().length, current.step() + way));
    choose("step", next);
    const step = next ? current.steps()[next - 1] : null;
    say(step ? `${step.say} ${step.class}` : inSigns(state.now()));
    root.dispatchEvent(new CustomEvent("kit:change", { bubbles: true }));
  }

  /**
   * @param {string} trait
   * @param {unknown} value
   */
  function choose(trait, value) {
    frame.set({ [trait]: value });
    // The model tells of it; a host that does not is no reason to wait.
    traitChanged(trait);
  }

  /** @param {string} trait */
  function traitChanged(trait) {
    if (trait === "step") {
      paint();
    } else {
      applyTraits();
    }
  }

  frame.start({
    body: html("div", { class: "columns-body" },
      html("div", { class: "columns-sheet" }, paper, line.element), controls.side),
    applyTraits,
    changed: traitChanged,
    sized: [line.element],
    fit: () => line.element.hidden || paint(),
  });
}

export default { render };

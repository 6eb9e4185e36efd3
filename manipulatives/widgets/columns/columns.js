/**
 * The column board: a sum on squared paper, which is shown step by step or written by pupils. What
 * the steps are is worked out in Python; what is written means is decided in written.js.
 */
import { makeFrame } from "../shared/frame.js";
import { html, put } from "../shared/svg.js";
import { makeActs, makeCurrent, makeVerdicts } from "./acts.js";
import { makeKeypad, makePanel, makePupilTools, makeSteps } from "./controls.js";
import { inSigns } from "./describe.js";
import { makeGrid } from "./grid.js";
import { makeLine } from "./line.js";
import { makeStrip } from "./strip.js";
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
  const state = frame.undoable("sum", turn);
  const current = makeCurrent(get, state);
  root.facts = () => facts(current.shown());
  const verdicts = makeVerdicts(state);
  const acts = makeActs({ say, state, square, verdicts: verdicts.found, paint });
  const grid = makeGrid({ type: acts.type, check: () => acts.check(true) }, lifetime);
  const line = makeLine();
  const strip = makeStrip();
  const keypad = makeKeypad(acts.type, lifetime);
  const { tools, allow } = makePupilTools({ ...acts, check: () => acts.check(false) }, lifetime);
  const { saying, stepper, tell: tellStep } = makeSteps(go, lifetime);
  const { panel, agree } = makePanel(get, choose, lifetime);
  const paper = html("div", { class: "columns-paper" }, grid.element);
  const side = html("div", { class: "columns-side" }, saying, strip.element, keypad, tools, stepper,
    panel);

  function square() {
    return grid.current();
  }

  /** @param {boolean} begun whether the sum came from outside */
  function turn(begun) {
    if (begun) {
      verdicts.found.clear();
      dress();
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
    tellStep(steps, current.step());
    allow(sum.answer.some((digit) => digit !== null), ...state.uses());
  }

  /** Show what is to be shown, and nothing else. */
  function dress() {
    const [headings, marks, buttons, vocabulary] =
      ["headings", "marks", "buttons", "vocabulary"].map(get);
    const showing = current.isShowing();
    const open = get("writable") && !showing;
    const sum = state.now();
    put(root, { "data-mode": get("mode"), "data-form": sum.form });
    grid.build(sum, { headings, marks, below: vocabulary === "uk", open });
    root.style.setProperty("--across", String(grid.size.across));
    root.style.setProperty("--down", String(grid.size.down));
    root.classList.toggle("is-open", open);
    line.element.hidden = sum.form !== "line" || (!showing && !sum.jumps.length);
    strip.element.hidden = !get("blocks");
    keypad.hidden = !open;
    tools.hidden = !open || !buttons;
    saying.hidden = !showing || !buttons;
    stepper.hidden = saying.hidden;
    panel.hidden = !get("panel");
    side.hidden = [...side.children].every((child) => /** @type {HTMLElement} */ (child).hidden);
    agree();
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
    changed(trait);
  }

  /** @param {string} trait */
  function changed(trait) {
    if (trait === "step") {
      paint();
    } else {
      dress();
    }
  }

  frame.onTraits(changed);
  dress();
  frame.show(html("div", { class: "columns-body" },
    html("div", { class: "columns-sheet" }, paper, line.element), side));
  frame.onResize([line.element], () => line.element.hidden || paint());
}

export default { render };

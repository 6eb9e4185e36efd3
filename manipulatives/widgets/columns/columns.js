/**
 * The column board: a sum on squared paper, which is shown step by step or written by pupils. What
 * the steps are is worked out in Python; what is written means is decided in written.js.
 */
import { announce } from "../shared/announce.js";
import { makeUndoable } from "../shared/state/undoable.js";
import { html, put } from "../shared/svg.js";
import { makeKeypad, makePanel, makePupilTools, makeSteps } from "./controls.js";
import { inSigns, placeRight, rowName, verdict } from "./describe.js";
import { makeGrid } from "./grid.js";
import { makeLine } from "./line.js";
import { makeStrip } from "./strip.js";
import { NAMES, blank, blocksOf, facts, readAt, typed, written } from "./written.js";

/**
 * @typedef {import("./written.js").Sum} Sum
 * @typedef {import("./written.js").Step} Step
 */

const TRAITS = [
  "headings", "marks", "blocks", "vocabulary", "steps", "step", "mode", "writable", "buttons",
  "panel",
];

/**
 * @param {RenderProps} props
 * @returns {void}
 */
function render({ model, el, signal = new AbortController().signal }) {
  const scope = { signal };
  // What was found of each place when it was checked, until something else is written there.
  /** @type {Map<number, boolean>} */
  const verdicts = new Map();
  const grid = makeGrid({ type, check: () => check(true), moved: () => {} }, scope);
  const line = makeLine();
  const strip = makeStrip();
  const keypad = makeKeypad(type, scope);
  const { tools, allow } = makePupilTools({
    check: () => check(false),
    undo: () => undo(),
    reset: () => reset(),
  }, scope);
  const { saying, stepper, tell: tellStep } = makeSteps(go, scope);
  const { panel, agree } = makePanel((trait) => model.get(trait), choose, scope);
  const paper = html("div", { class: "columns-paper" }, grid.element);
  const side = html("div", { class: "columns-side" }, saying, strip.element, keypad, tools, stepper,
    panel);
  const body = html("div", { class: "columns-body" },
    html("div", { class: "columns-sheet" }, paper, line.element), side);
  const root = html("div", {
    "class": "kit kit-columns kit-manipulative",
    "role": "group",
    "aria-label": "Column board",
    "data-lm-suppress-shortcuts": "true",
  }, html("div", { class: "columns-room" }, body));

  /** @type {import("../shared/state/undoable.js").Undoable<Sum>} */
  const kept = makeUndoable(model, "sum", root, (begun) => {
    if (begun) {
      verdicts.clear();
      dress();
    } else {
      forget();
      paint();
    }
  }, scope);
  root.facts = () => facts(shown());
  let was = kept.now();

  /** Of what was written anew nothing is found yet. */
  function forget() {
    kept.now().answer.forEach((digit, column) => {
      if (digit !== was.answer[column]) {
        verdicts.delete(column);
      }
    });
    was = kept.now();
  }

  function isShowing() {
    return model.get("mode") === "show";
  }

  /** @returns {Step[]} */
  function steps() {
    return model.get("steps");
  }

  /** @returns {number} how many of them have been shown */
  function step() {
    return Math.min(model.get("step"), steps().length);
  }

  /** @returns {Sum} what is on the sheet */
  function shown() {
    return isShowing() ? written(blank(kept.now()), steps().slice(0, step())) : kept.now();
  }

  /** Show what is written, and what stands for it. */
  function paint() {
    const showing = isShowing();
    const now = showing && step() ? steps()[step() - 1] : null;
    const sum = shown();
    grid.paint(sum, { verdicts: showing ? new Map() : verdicts, column: now?.column ?? null });
    if (!strip.element.hidden) {
      const all = showing ? steps().map(({ blocks }) => blocks) : [];
      strip.paint(sum, now?.blocks ?? blocksOf(sum), all);
    }
    if (!line.element.hidden) {
      line.paint(sum, showing ? written(blank(sum), steps()) : sum);
    }
    tellStep(steps(), step());
    const something = sum.answer.some((digit) => digit !== null);
    allow(something, ...kept.uses());
  }

  /** Show what is to be shown, and nothing else. */
  function dress() {
    const [headings, marks, buttons, vocabulary] =
      ["headings", "marks", "buttons", "vocabulary"].map((trait) => model.get(trait));
    const showing = isShowing();
    const open = model.get("writable") && !showing;
    const sum = kept.now();
    put(root, { "data-mode": model.get("mode"), "data-form": sum.form });
    grid.build(sum, { headings, marks, below: vocabulary === "uk", open });
    root.style.setProperty("--across", String(grid.size.across));
    root.style.setProperty("--down", String(grid.size.down));
    root.classList.toggle("is-open", open);
    line.element.hidden = sum.form !== "line" || (!showing && !sum.jumps.length);
    strip.element.hidden = !model.get("blocks");
    keypad.hidden = !open;
    tools.hidden = !open || !buttons;
    saying.hidden = !showing || !buttons;
    stepper.hidden = saying.hidden;
    panel.hidden = !model.get("panel");
    side.hidden = [...side.children].every((child) => /** @type {HTMLElement} */ (child).hidden);
    agree();
    paint();
  }

  /** @param {string} sentence */
  function tell(sentence) {
    announce(root, sentence);
  }

  /**
   * A key for the current square.
   * @param {string} key
   */
  function type(key) {
    const place = grid.current();
    if (!place) {
      return;
    }
    const { row, column } = place;
    if (kept.act(typed(kept.now(), row, column, key))) {
      const there = readAt(kept.now(), row, column) ?? "empty";
      tell(`${rowName(kept.now(), row)}, ${NAMES[column]}: ${there}.`);
    }
  }

  function undo() {
    if (kept.undo()) {
      tell("Undone.");
    }
  }

  function reset() {
    if (kept.reset()) {
      tell("As it was at first.");
    }
  }

  /**
   * Find out which places are right: one, or all where something is written.
   * @param {boolean} one only the current one
   */
  function check(one) {
    const sum = kept.now();
    const place = grid.current();
    const columns = one && place ? [place.column] : [...sum.answer.keys()];
    for (const column of columns) {
      const right = placeRight(sum, column);
      if (right !== null) {
        verdicts.set(column, right);
      }
    }
    paint();
    tell(verdict(sum, columns));
  }

  /**
   * Go a step on or back.
   * @param {number} way
   */
  function go(way) {
    const next = Math.max(0, Math.min(steps().length, step() + way));
    choose("step", next);
    const now = next ? steps()[next - 1] : null;
    tell(now ? `${now.say} ${now.class}` : inSigns(kept.now()));
    root.dispatchEvent(new CustomEvent("kit:change", { bubbles: true }));
  }

  /**
   * @param {string} trait
   * @param {unknown} value
   */
  function choose(trait, value) {
    model.set(trait, value);
    model.save_changes();
    // The model tells of it; a host that does not is no reason to wait.
    if (trait === "step") {
      paint();
    } else {
      dress();
    }
  }

  for (const name of TRAITS) {
    model.on(`change:${name}`, () => signal.aborted || (name === "step" ? paint() : dress()));
  }

  dress();
  el.replaceChildren(root);
  const watch = new ResizeObserver(() => signal.aborted || line.element.hidden || paint());
  watch.observe(line.element);
  signal.addEventListener("abort", () => watch.disconnect());
}

export default { render };

/** What stands beside the sheet: the keypad, the tools, the steps and the switches. */
import { ICONS, button, makeSwitches, makeTools } from "../shared/controls.js";
import { html, icon, put } from "../shared/svg.js";

/**
 * @typedef {{ signal: AbortSignal }} Lifetime
 * @typedef {import("./written.js").Step} Step
 */

const BACK = "M9 5H21V19H9L3 12ZM11.5 9.5L16.5 14.5M16.5 9.5L11.5 14.5";
const CHECK = "M4 13L10 19L20 6";

/** @type {[string, string][]} */
const SWITCHES = [["headings", "Headings"], ["marks", "Marks"], ["blocks", "Blocks"]];

/**
 * All that stands beside the sheet.
 * @param {{
 *   frame: import("../shared/frame.js").Frame,
 *   current: import("./current.js").Current,
 *   actions: import("./actions.js").Actions,
 *   strip: HTMLElement,
 *   go: (way: number) => void,
 *   choose: (trait: string, value: unknown) => void,
 * }} parts of the widget; go a step on or back
 */
export function makeControls({ frame: { get, lifetime }, current, actions, strip, go, choose }) {
  const keypad = makeKeypad(actions.type, lifetime);
  const { tools, allow } = makePupilTools(
    { ...actions, check: () => actions.check(false) }, lifetime,
  );
  const { saying, stepper, tell } = makeSteps(go, lifetime);
  const { panel, update } = makePanel(get, choose, lifetime);
  const parts = [saying, strip, keypad, tools, stepper, panel];
  const side = html("div", { class: "columns-side" }, ...parts);
  return {
    side,

    /** Show what the traits say. */
    applyTraits() {
      const open = current.isOpen();
      const buttons = get("buttons");
      keypad.hidden = !open;
      tools.hidden = !open || !buttons;
      saying.hidden = !current.isShowing() || !buttons;
      stepper.hidden = saying.hidden;
      panel.hidden = !get("panel");
      side.hidden = parts.every(({ hidden }) => hidden);
      update();
    },

    /**
     * Write what is said at the step, and offer what can be done.
     * @param {boolean} any whether there is something to check
     * @param {boolean[]} uses whether there is something to undo, and to reset
     */
    paint(any, uses) {
      tell(current.steps(), current.step());
      allow(any, ...uses);
    },
  };
}

/**
 * The keys to write with.
 * @param {(key: string) => void} type
 * @param {Lifetime} lifetime
 * @returns {HTMLElement}
 */
function makeKeypad(type, lifetime) {
  const digits = [..."1234567890"].map((digit) => button([digit], () => type(digit), lifetime));
  const back = button([icon(BACK)], () => type("back"), lifetime, { "aria-label": "Rub out" });
  return html(
    "div", { class: "columns-keys", role: "group", "aria-label": "Digits" }, ...digits, back,
  );
}

/**
 * The tools of a pupil.
 * @param {{ check: () => void, undo: () => void, reset: () => void }} actions
 * @param {Lifetime} lifetime
 * @returns {{ tools: HTMLElement, allow: (...uses: boolean[]) => void }} whether there is something
 *   to do for each, in the order check, undo, reset
 */
function makePupilTools({ check, undo, reset }, lifetime) {
  const { buttons, allow } = makeTools([
    [CHECK, "Check", check], [ICONS.undo, "Undo", undo], [ICONS.reset, "Reset", reset],
  ], lifetime);
  return { tools: html("div", { class: "columns-tools" }, ...buttons), allow };
}

/**
 * What is said at a step, and the buttons that lead on and back.
 * @param {(way: number) => void} go
 * @param {Lifetime} lifetime
 * @returns {{
 *   saying: HTMLElement, stepper: HTMLElement, tell: (steps: Step[], step: number) => void,
 * }}
 */
function makeSteps(go, lifetime) {
  const say = html("p", { class: "columns-say" });
  const answer = html("strong");
  const everyone = html("p", { class: "columns-class" }, html("small", {}, "everyone"), answer);
  const back = button(["Back"], () => go(-1), lifetime);
  const next = button(["Next step"], () => go(1), lifetime, { class: "kit-button is-go" });
  const count = html("span", { class: "columns-count" });
  return {
    saying: html("div", { class: "columns-saying" }, say, everyone),
    stepper: html("div", { class: "columns-stepper" }, back, next, count),
    tell(steps, step) {
      const now = step ? steps[step - 1] : null;
      say.textContent = now ? now.say : "Ready? Press Next step.";
      answer.textContent = now ? now.class : "";
      everyone.classList.toggle("is-silent", !now?.class);
      count.textContent = `${step} of ${steps.length}`;
      put(back, { "aria-disabled": step === 0 });
      put(next, { "aria-disabled": step === steps.length });
    },
  };
}

/**
 * The switches of free play.
 * @param {(trait: string) => any} get what a trait is now
 * @param {(trait: string, value: unknown) => void} choose
 * @param {Lifetime} lifetime
 * @returns {{ panel: HTMLElement, update: () => void }} the switches; update them from the
 *   traits
 */
function makePanel(get, choose, lifetime) {
  const { tiles, update } = makeSwitches(SWITCHES, get, choose, lifetime);
  const modes = [["show", "Show"], ["try", "Try"]].map(([mode, name]) => ({
    mode,
    made: button([name], () => choose("mode", mode), lifetime),
  }));
  return {
    panel: html(
      "div", { class: "columns-panel" },
      html("div", { class: "columns-modes", role: "group", "aria-label": "What is done" },
        ...modes.map(({ made }) => made)),
      html("div", { class: "columns-tiles" }, ...tiles),
    ),
    update() {
      update();
      modes.forEach(({ mode, made }) => put(made, { "aria-pressed": get("mode") === mode }));
    },
  };
}

/** What stands beside the chart: the count, the keypad, undo and reset, switches of free play. */
import { ICONS, button, makeSwitches, makeTools } from "../shared/controls.js";
import { html, icon, put } from "../shared/svg.js";

/** @typedef {import("../shared/controls.js").Lifetime} Lifetime */

const BACK = "M20 12H5M11 6L5 12L11 18";
const DONE = "M4 13L10 19L20 6";
const LESS = "M15 5L8 12L15 19";
const MORE = "M9 5L16 12L9 19";
const PLAY = "M8 5L18 12L8 19Z";
const STOP = "M7 7H17V17H7Z";

/** @type {[string, string][]} */
const MODES = [["count", "Count"], ["wipe", "Wipe"], ["write", "Write"]];
const RANGES = [[1, 20], [1, 100], [0, 99], [1, 120], [101, 200], [901, 1000], [1, 1000]];
/** @type {Record<string, string>} */
const HIDDEN = {
  none: "Nothing",
  thirds: "Every third",
  cross: "A cross",
  patch: "A patch",
  counts: "The counts",
  all: "All",
};
const STEPS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 15, 20, 25, 50, 100];
const BEATS = [0, 20, 30, 40, 50, 60, 80, 100];

/**
 * All that stands beside the chart.
 * @param {{
 *   frame: import("../shared/frame.js").Frame,
 *   current: import("./current.js").Current,
 *   actions: import("./actions.js").Actions,
 *   beat: ReturnType<typeof import("../shared/beat.js").makeBeat>,
 *   toggleBeat: () => void,
 *   choose: (...changes: [trait: string, value: unknown][]) => void,
 * }} parts of the widget
 */
export function makeControls({ frame, current, actions, beat, toggleBeat, choose }) {
  const { get, lifetime } = frame;
  const { isMovable, isWriting } = current;
  const said = html("div", { class: "chart-said" });
  const { counter, tools, update: updateCounter, allow } = makeCounter(
    { count: actions.count, beat: toggleBeat, undo: actions.undo, reset: actions.reset }, lifetime,
  );
  const keypad = makeKeypad(actions.type, lifetime);
  const { panel, update } = makePanel(get, choose, lifetime);
  return {
    side: html("div", { class: "chart-side" }, said, counter, keypad, tools, panel),

    /** Show what the traits say. */
    applyTraits() {
      counter.hidden = isWriting() || !get("buttons") || !isMovable();
      keypad.hidden = !isWriting() || !isMovable();
      tools.hidden = !get("buttons") || !isMovable();
      panel.hidden = !get("panel");
      update();
    },

    /**
     * Write a sentence, and offer what can be done.
     * @param {string} sentence
     * @param {boolean} more whether there is a number to count
     * @param {boolean[]} uses whether there is something to undo, and to reset
     */
    paint(sentence, more, uses) {
      said.textContent = sentence;
      updateCounter(get("mode"), more, get("beat"), beat.isRunning());
      allow(...uses);
    },
  };
}

/**
 * The buttons to count with, undo and reset.
 * @param {{ count: () => void, beat: () => void, undo: () => void, reset: () => void }} actions
 * @param {Lifetime} lifetime
 * @returns {{
 *   counter: HTMLElement, tools: HTMLElement,
 *   update: (mode: string, more: boolean, beat: number, running: boolean) => void,
 *   allow: (...uses: boolean[]) => void,
 * }} the buttons; what they are for just now; whether there is something to undo and to reset
 */
function makeCounter({ count, beat, undo, reset }, lifetime) {
  const next = button([], count, lifetime, { class: "kit-button chart-next" });
  const beats = button([], beat, lifetime);
  const { buttons, allow } = makeTools(
    [[ICONS.undo, "Undo", undo], [ICONS.reset, "Reset", reset]], lifetime,
  );
  return {
    counter: html("div", { class: "chart-counter" }, next, beats),
    tools: html("div", { class: "chart-counter" }, ...buttons),
    update(mode, more, perMinute, running) {
      next.textContent = mode === "wipe" ? "Wipe next" : "Count next";
      put(next, { "aria-disabled": !more });
      beats.hidden = perMinute === 0;
      put(beats, { "aria-disabled": !more && !running, "aria-pressed": running });
      beats.replaceChildren(icon(running ? STOP : PLAY), running ? "Stop" : `Beat ${perMinute}`);
    },
    allow,
  };
}

/**
 * The keys to write digits with.
 * @param {(key: string) => void} press given a digit, "Backspace" or "Enter"
 * @param {Lifetime} lifetime
 * @returns {HTMLElement}
 */
function makeKeypad(press, lifetime) {
  const digits = ["1", "2", "3", "4", "5", "6", "7", "8", "9"];
  const key = (/** @type {string} */ digit) => button([digit], () => press(digit), lifetime);
  return html(
    "div", { class: "chart-keypad", role: "group", "aria-label": "Digits" },
    ...digits.map(key),
    button([icon(BACK)], () => press("Backspace"), lifetime, { "aria-label": "Delete" }),
    key("0"),
    button([icon(DONE)], () => press("Enter"), lifetime, { "aria-label": "Done" }),
  );
}

/**
 * The switches of free play.
 * @param {(trait: string) => any} get what a trait is now
 * @param {(...changes: [trait: string, value: unknown][]) => void} choose
 * @param {Lifetime} lifetime
 * @returns {{ panel: HTMLElement, update: () => void }} the switches; update them from the
 *   traits
 */
function makePanel(get, choose, lifetime) {
  const { tiles, update } = makeSwitches(
    [["line", "Line"], ["direction", "Back"]],
    (trait) => (trait === "direction" ? get(trait) === "back" : get(trait)),
    (trait, on) => choose([trait, trait === "direction" ? (on ? "back" : "forward") : on]),
    lifetime,
  );
  const modes = MODES.map(([mode, name]) => button([name], () => {
    // There is nothing to write where nothing is hidden.
    const bare = mode === "write" && get("hidden") === "none";
    choose(["mode", mode], ["hidden", bare ? "cross" : get("hidden")]);
  }, lifetime));
  const pills = [
    makePill(
      "Numbers", RANGES, () => [get("first"), get("last")],
      ([first, last]) => `${first}\u2013${last}`,
      ([first, last]) => choose(["first", first], ["last", last]), lifetime,
    ),
    makePill("Steps", STEPS, () => get("step"), String, (step) => choose(["step", step]), lifetime),
    makePill(
      "Hidden", Object.keys(HIDDEN), () => get("hidden"), (hidden) => HIDDEN[hidden] ?? "Some",
      (hidden) => choose(["hidden", hidden]), lifetime,
    ),
    makePill(
      "Beat", BEATS, () => get("beat"), (beat) => (beat ? String(beat) : "Off"),
      (beat) => choose(["beat", beat]), lifetime,
    ),
  ];
  return {
    panel: html(
      "div", { class: "chart-panel" },
      html("div", { class: "chart-modes" }, ...modes),
      ...pills.map(({ pill }) => pill),
      html("div", { class: "chart-tiles" }, ...tiles),
    ),
    update() {
      update();
      MODES.forEach(([mode], index) => put(modes[index], { "aria-pressed": get("mode") === mode }));
      pills.forEach((each) => each.update());
    },
  };
}

/**
 * Something chosen from a row of values, one before or after the other.
 * @template Value
 * @param {string} name
 * @param {Value[]} values
 * @param {() => Value} get
 * @param {(value: Value) => string} text
 * @param {(value: Value) => void} choose
 * @param {Lifetime} lifetime
 * @returns {{ pill: HTMLElement, update: () => void }}
 */
function makePill(name, values, get, text, choose, lifetime) {
  const shown = html("span");
  const same = (/** @type {Value} */ value) => JSON.stringify(value) === JSON.stringify(get());

  /** @param {number} way */
  function go(way) {
    const at = values.findIndex(same);
    const above = values.findIndex((value) => value > get());
    // A value of a teacher's own has its place between two of these.
    const beside = (above < 0 ? values.length : above) - (way > 0 ? 1 : 0);
    const next = (at < 0 ? beside : at) + way;
    choose(values[(next + values.length) % values.length]);
  }

  const less = button([icon(LESS)], () => go(-1), lifetime, { "aria-label": `${name}: before` });
  const more = button([icon(MORE)], () => go(1), lifetime, { "aria-label": `${name}: after` });
  return {
    pill: html(
      "div", { class: "chart-pill", role: "group", "aria-label": name },
      less, html("span", { class: "chart-chosen" }, html("small", {}, name), shown), more,
    ),
    update() {
      shown.textContent = text(get());
    },
  };
}

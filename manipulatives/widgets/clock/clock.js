/**
 * The clock: two hands to take hold of, with readings, step buttons and switches beside the face.
 * What the hands do is decided in dial.js; here it is shown, changed and announced.
 */
import { makeFrame } from "../shared/frame.js";
import { onKeys } from "../shared/keys.js";
import { html, put } from "../shared/svg.js";
import { makeMoves, makePanel } from "./controls.js";
import { handsInWords, hourPlace, minutePlace } from "./describe.js";
import { readingInDigits, readingInWords } from "./describe.js";
import { HOUR, dialAt, facts, keyed, minutesBetween, pressed, timeMeant } from "./dial.js";
import { HANDS, drawFace } from "./drawing.js";
import { holdHands } from "./hold.js";

/**
 * @typedef {import("./dial.js").Dial} Dial
 * @typedef {import("./dial.js").Rules} Rules
 *
 * @typedef {object} Looks the traits beside the dial, each described in clock.py
 * @property {boolean} movable
 * @property {boolean} numerals
 * @property {boolean} ticks
 * @property {boolean} minute_numbers
 * @property {boolean} digital
 * @property {boolean} words
 * @property {boolean} sector
 * @property {boolean} arc
 * @property {boolean} half_day
 * @property {"us" | "uk"} vocabulary
 * @property {boolean} buttons
 * @property {boolean} panel
 *
 * @typedef {Rules & Looks} Traits
 */

const TRAITS = [
  "mode", "hour_drag", "snap", "movable", "numerals", "ticks", "minute_numbers", "digital",
  "words", "sector", "arc", "half_day", "vocabulary", "buttons", "panel",
];

/**
 * @param {RenderProps} props
 * @returns {void}
 */
function render(props) {
  const frame = makeFrame(props, "clock", "Clock", TRAITS);
  const { root, lifetime, say, get } = frame;
  /** @type {() => Traits} */
  const traits = frame.traits;
  const face = drawFace();
  const digits = html("div", { class: "clock-digits" });
  const words = html("div", { class: "clock-words" });
  // Minutes that a geared clock goes on for the step that is painted next.
  let minutes = 0;
  /** @type {import("../shared/state/undoable.js").Undoable<Dial>} */
  const state = frame.undoable("dial", turn);
  root.facts = () => facts(state.now());
  const { moves, allow } = makeMoves({
    step: (hand, way) => act(pressed(state.now(), hand, way, traits())),
    undo,
    reset: () => act(state.first()),
  }, lifetime);
  const { panel, agree } = makePanel(get, choose, lifetime);
  const side = html("div", { class: "clock-side" }, digits, words, moves, panel);
  const holding = holdHands(face, root, { state, traits, act, settle, say }, lifetime);

  /** @param {boolean} begun whether the dial came from outside */
  function turn(begun) {
    if (begun) {
      holding.drop();
    }
    paint();
  }

  /** Show the dial. */
  function paint() {
    const dial = state.now();
    face.stand(dial, minutes);
    minutes = 0;
    for (const hand of HANDS) {
      const text = (hand === "hour" ? hourPlace : minutePlace)(dial[hand]);
      put(face.handles[hand], { "aria-valuenow": dial[hand], "aria-valuetext": text });
    }
    put(face.drawing, { "aria-label": handsInWords(dial) });
    const [time, half] = readingInDigits(dial, traits()).split(" ");
    digits.replaceChildren(time, html("small", {}, half ? ` ${half}` : ""));
    words.textContent = readingInWords(dial, traits());
    allow(...state.uses());
  }

  /** Show what is to be shown, and nothing else. */
  function dress() {
    const now = traits();
    face.show(now);
    agree();
    put(root, { "data-mode": now.mode });
    digits.hidden = !now.digital;
    // Free hands may not fit each other. The line that says so stays, so that nothing jumps.
    words.hidden = !now.words && !(now.digital && now.mode === "free");
    moves.hidden = !now.movable || !now.buttons;
    panel.hidden = !now.panel;
    if (!now.movable) {
      holding.drop();
    }
    paint();
  }

  /**
   * Go to another dial in one step.
   * @param {Dial} next
   * @param {boolean} [more] it goes on with the step before
   */
  function act(next, more) {
    const was = state.now();
    const between = minutesBetween(was, next);
    if (!holding.isHeld()) {
      const turns = get("mode") === "geared" && get("hour_drag") === "turns";
      minutes = turns && Math.abs(between) <= HOUR ? between : 0;
      if (state.slide(next)) {
        settle(more ? next : was);
      }
    }
  }

  /**
   * A step is over: it is said, and can be undone from now on.
   * @param {Dial} was the dial before
   */
  function settle(was) {
    state.settle(was);
    const now = traits();
    const dial = state.now();
    say(now.digital || now.words ? readingInWords(dial, now) : handsInWords(dial));
  }

  function undo() {
    if (!holding.isHeld() && state.undo()) {
      settle(state.now());
    }
  }

  /**
   * @param {string} trait
   * @param {unknown} value
   */
  function choose(trait, value) {
    frame.set({ [trait]: value });
    dress();
    if (value === "geared") {
      act(dialAt(timeMeant(state.now())));
    }
  }

  for (const hand of HANDS) {
    onKeys(face.handles[hand], (key, event) => {
      if (key === "Escape") {
        const was = holding.drop();
        return was !== null && (state.slide(was) || true);
      }
      const next = keyed(state.now(), hand, key, traits());
      if (next) {
        act(next, event.repeat);
      }
      return Boolean(next);
    }, lifetime);
  }
  frame.onTraits(dress);
  frame.onResize([face.frame], face.fit);
  dress();
  frame.show(html("div", { class: "clock-body" }, face.frame, side));
}

export default { render };

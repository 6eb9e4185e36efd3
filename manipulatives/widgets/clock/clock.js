/**
 * The clock: two hands to take hold of, with readings, step buttons and switches beside the face.
 * What the hands do is decided in dial.js; here it is shown, changed and announced.
 */
import { makeFrame } from "../shared/frame.js";
import { html, put } from "../shared/svg.js";
import { makeActions } from "./actions.js";
import { makeControls } from "./controls.js";
import { handsInWords, hourPlace, minutePlace } from "./describe.js";
import { dialAt, facts, timeMeant } from "./dial.js";
import { HANDS, drawFace } from "./drawing.js";
import { holdHands } from "./hold.js";
import { useInput } from "./input.js";

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
  const { root } = frame;
  /** @type {() => Traits} */
  const traits = frame.traits;
  const face = drawFace();
  /** @type {import("../shared/state/undoable.js").Undoable<Dial>} */
  const state = frame.undoable("dial", stateChanged);
  root.facts = () => facts(state.now());
  const actions = makeActions({ frame, state, traits, isHeld });
  const controls = makeControls({ frame, actions, choose });
  const holding = holdHands({ frame, face, state, traits, actions });

  function isHeld() {
    return holding.isHeld();
  }

  /** @param {boolean} fromOutside whether the dial came from outside */
  function stateChanged(fromOutside) {
    if (fromOutside) {
      holding.drop();
    }
    paint();
  }

  /** Show the dial. */
  function paint() {
    const dial = state.now();
    face.stand(dial, actions.minutes);
    actions.minutes = 0;
    for (const hand of HANDS) {
      const text = (hand === "hour" ? hourPlace : minutePlace)(dial[hand]);
      put(face.handles[hand], { "aria-valuenow": dial[hand], "aria-valuetext": text });
    }
    put(face.drawing, { "aria-label": handsInWords(dial) });
    controls.paint(dial, traits(), state.uses());
  }

  /** Show what the traits say, and nothing else. */
  function applyTraits() {
    const now = traits();
    face.show(now);
    put(root, { "data-mode": now.mode });
    controls.applyTraits(now);
    if (!now.movable) {
      holding.drop();
    }
    paint();
  }

  /**
   * @param {string} trait
   * @param {unknown} value
   */
  function choose(trait, value) {
    frame.set({ [trait]: value });
    applyTraits();
    if (value === "geared") {
      actions.go(dialAt(timeMeant(state.now())));
    }
  }

  useInput({ frame, face, state, traits, actions, holding });
  frame.start({
    body: html("div", { class: "clock-body" }, face.frame, controls.side),
    applyTraits,
    sized: [face.frame],
    fit: face.fit,
  });
}

export default { render };

/** What a finger, a button or a key does to the hands. Each is one step, and is told. */
import { handsInWords, readingInWords } from "./describe.js";
import { HOUR, minutesBetween, pressed } from "./dial.js";

/**
 * @typedef {import("./dial.js").Dial} Dial
 * @typedef {import("./dial.js").Hand} Hand
 *
 * @typedef {object} Parts of the widget
 * @property {import("../shared/frame.js").Frame} frame
 * @property {import("../shared/state/undoable.js").Undoable<Dial>} state
 * @property {() => import("./clock.js").Traits} traits
 * @property {() => boolean} isHeld
 *
 * @typedef {ReturnType<typeof makeActions>} Actions
 */

/** @param {Parts} parts */
export function makeActions({ frame, state, traits, isHeld }) {
  const actions = {
    // Minutes that a geared clock goes on for the step that is painted next.
    minutes: 0,

    /**
     * Go to another dial in one step, unless a hand is held.
     * @param {Dial} next
     * @param {boolean} [more] it goes on with the step before
     */
    go(next, more) {
      const was = state.now();
      const between = minutesBetween(was, next);
      if (!isHeld()) {
        const { mode, hour_drag: drag } = traits();
        const turns = mode === "geared" && drag === "turns";
        actions.minutes = turns && Math.abs(between) <= HOUR ? between : 0;
        if (state.slide(next)) {
          actions.settle(more ? next : was);
        }
      }
    },

    /**
     * A step is over: it is said, and can be undone from now on.
     * @param {Dial} was the dial before
     */
    settle(was) {
      state.settle(was);
      const now = traits();
      const dial = state.now();
      frame.say(now.digital || now.words ? readingInWords(dial, now) : handsInWords(dial));
    },

    /**
     * @param {Hand} hand
     * @param {number} way
     */
    step(hand, way) {
      actions.go(pressed(state.now(), hand, way, traits()));
    },

    undo() {
      if (!isHeld() && state.undo()) {
        actions.settle(state.now());
      }
    },

    reset() {
      actions.go(state.first());
    },
  };
  return actions;
}

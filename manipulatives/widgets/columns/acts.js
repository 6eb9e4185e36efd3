/** What pupils do to a sum, and what was found when it was checked. */
import { placeRight, rowName, verdict } from "./describe.js";
import { NAMES, blank, readAt, typed, written } from "./written.js";

/**
 * @typedef {import("./written.js").Sum} Sum
 * @typedef {import("./written.js").Step} Step
 * @typedef {import("../shared/state/undoable.js").Undoable<Sum>} State
 */

/**
 * What is shown just now.
 * @param {(trait: string) => any} get
 * @param {State} state
 */
export function makeCurrent(get, state) {
  const current = {
    isShowing: () => get("mode") === "show",

    /** @returns {Step[]} */
    steps: () => get("steps"),

    /** @returns {number} how many of them have been shown */
    step: () => Math.min(get("step"), current.steps().length),

    /** @returns {Sum} what is on the sheet */
    shown: () => (current.isShowing()
      ? written(blank(state.now()), current.steps().slice(0, current.step()))
      : state.now()),
  };
  return current;
}

/**
 * What was found of each place when it was checked, until something else is written there.
 * @param {State} state
 */
export function makeVerdicts(state) {
  /** @type {Map<number, boolean>} */
  const found = new Map();
  let was = state.now();
  return {
    found,
    /** Of what was written anew nothing is found yet. */
    forget() {
      state.now().answer.forEach((digit, column) => {
        if (digit !== was.answer[column]) {
          found.delete(column);
        }
      });
      was = state.now();
    },
  };
}

/**
 * @param {{
 *   say: (sentence: string) => void,
 *   state: State,
 *   square: () => { row: import("./written.js").Row, column: number } | null,
 *   verdicts: Map<number, boolean>,
 *   paint: () => void,
 * }} parts square is the one that has the focus
 */
export function makeActs({ say, state, square, verdicts, paint }) {
  return {
    /**
     * A key for the current square.
     * @param {string} key
     */
    type(key) {
      const place = square();
      if (place && state.act(typed(state.now(), place.row, place.column, key))) {
        const { row, column } = place;
        const there = readAt(state.now(), row, column) ?? "empty";
        say(`${rowName(state.now(), row)}, ${NAMES[column]}: ${there}.`);
      }
    },

    /**
     * Find out which places are right: one, or all where something is written.
     * @param {boolean} one only the current one
     */
    check(one) {
      const sum = state.now();
      const place = square();
      const columns = one && place ? [place.column] : [...sum.answer.keys()];
      for (const column of columns) {
        const right = placeRight(sum, column);
        if (right !== null) {
          verdicts.set(column, right);
        }
      }
      paint();
      say(verdict(sum, columns));
    },

    undo() {
      if (state.undo()) {
        say("Undone.");
      }
    },

    reset() {
      if (state.reset()) {
        say("As it was at first.");
      }
    },
  };
}

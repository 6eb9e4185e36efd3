/** What pupils do to a sum. */
import { placeRight, rowName, verdict } from "./describe.js";
import { NAMES, readAt, typed } from "./written.js";

/**
 * @typedef {object} Parts of the widget
 * @property {import("../shared/frame.js").Frame} frame
 * @property {import("../shared/state/undoable.js").Undoable<import("./written.js").Sum>} state
 * @property {() => { row: import("./written.js").Row, column: number } | null} square the one that
 *   has the focus
 * @property {Map<number, boolean>} verdicts
 * @property {() => void} paint
 *
 * @typedef {ReturnType<typeof makeActions>} Actions
 */

/** @param {Parts} parts */
export function makeActions({ frame: { say }, state, square, verdicts, paint }) {
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

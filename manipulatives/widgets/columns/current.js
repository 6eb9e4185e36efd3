/** What the board and its traits are just now. */
import { blank, written } from "./written.js";

/**
 * @typedef {import("./written.js").Sum} Sum
 * @typedef {import("./written.js").Step} Step
 *
 * @typedef {ReturnType<typeof makeCurrent>} Current
 */

/**
 * @param {(trait: string) => any} get
 * @param {import("../shared/state/undoable.js").Undoable<Sum>} state
 */
export function makeCurrent(get, state) {
  const current = {
    isShowing: () => get("mode") === "show",

    /** @returns {boolean} whether pupils write in it */
    isOpen: () => get("writable") && !current.isShowing(),

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

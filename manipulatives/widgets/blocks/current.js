/** What the mats and their traits are just now. */
import { full } from "./state/places.js";

/**
 * @typedef {import("./state/places.js").Mat} Mat
 *
 * @typedef {ReturnType<typeof makeCurrent>} Current
 */

/**
 * @param {(trait: string) => any} get
 * @param {import("../shared/state/undoable.js").Undoable<Mat>} state
 */
export function makeCurrent(get, state) {
  return {
    /** @returns {Mat} with a number for every place */
    mat: () => state.now().map(full),

    /** @returns {boolean} whether blocks are traded by ring and by dropping them */
    byHand: () => ["any", "ring"].includes(get("trades")),

    /** @returns {boolean} whether blocks are traded by buttons */
    byButton: () => ["any", "button"].includes(get("trades")),
  };
}

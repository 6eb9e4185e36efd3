/** What keys do on the hands. */
import { onKeys } from "../shared/keys.js";
import { keyed } from "./dial.js";
import { HANDS } from "./drawing.js";

/**
 * @typedef {object} Parts of the widget
 * @property {import("../shared/frame.js").Frame} frame
 * @property {import("./drawing.js").Face} face
 * @property {import("../shared/state/undoable.js").Undoable<import("./dial.js").Dial>} state
 * @property {() => import("./dial.js").Rules} traits
 * @property {import("./actions.js").Actions} actions
 * @property {ReturnType<typeof import("./hold.js").holdHands>} holding
 */

/**
 * Listen to keys.
 * @param {Parts} parts
 * @returns {void}
 */
export function useInput({ frame, face, state, traits, actions, holding }) {
  for (const hand of HANDS) {
    onKeys(face.handles[hand], (key, event) => {
      if (key === "Escape") {
        const was = holding.drop();
        return was !== null && (state.slide(was) || true);
      }
      const next = keyed(state.now(), hand, key, traits());
      if (next) {
        actions.go(next, event.repeat);
      }
      return Boolean(next);
    }, frame.lifetime);
  }
}

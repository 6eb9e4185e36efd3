/** What keys do on a column of a mat. */
import { onKeys } from "../shared/keys.js";
import { PLACES } from "./state/places.js";

/**
 * Listen to keys.
 * @param {{
 *   frame: import("../shared/frame.js").Frame,
 *   mats: import("./mats.js").Mats,
 *   actions: import("./actions.js").Actions,
 *   holding: ReturnType<typeof import("./hold/hold.js").holdBlocks>,
 *   focused: () => void,
 * }} parts of the widget; focused, a column has the focus
 * @returns {void}
 */
export function useInput({ frame: { lifetime }, mats, actions, holding, focused }) {
  mats.views.forEach(({ columns }, at) => {
    for (const place of PLACES) {
      const { handle } = columns[place];
      handle.addEventListener("focus", () => {
        actions.active = at;
        focused();
      }, lifetime);
      onKeys(handle, (key) => {
        if (key === "Enter" || key === " ") {
          holding.enter({ at, place });
          return true;
        }
        return key === "Escape" ? holding.drop() : actions.key(at, place, key);
      }, lifetime);
    }
  });
}

/** What keys do on the tray and on the purse, and what a screen reader does in their place. */
import { onKeys } from "../shared/keys.js";
import { counting } from "./state/tray.js";

/**
 * @typedef {object} Parts of the widget
 * @property {import("../shared/frame.js").Frame} frame
 * @property {import("./mat.js").Mat} mat
 * @property {import("./current.js").Current} current
 * @property {import("./actions.js").Actions} actions
 * @property {ReturnType<typeof import("./hold.js").holdCoins>} holding
 */

/** @type {Record<string, [number, number]>} */
const NUDGES = {
  "Shift+ArrowLeft": [-1, 0],
  "Shift+ArrowRight": [1, 0],
  "Shift+ArrowUp": [0, -1],
  "Shift+ArrowDown": [0, 1],
};

/**
 * Listen to keys.
 * @param {Parts} parts
 * @returns {void}
 */
export function useInput({ frame, mat, current, actions, holding }) {
  const { root, lifetime, get } = frame;

  /**
   * Use a key on a coin of the tray.
   * @param {number} place
   * @param {string} key
   * @returns {boolean} whether it means something
   */
  function useCoin(place, key) {
    const order = counting(current.tray());
    const at = order.indexOf(place);
    /** @type {Record<string, number>} */
    const others = {
      ArrowRight: order[at + 1] ?? place,
      ArrowDown: order[at + 1] ?? place,
      ArrowLeft: order[at - 1] ?? place,
      ArrowUp: order[at - 1] ?? place,
      Home: order[0],
      End: order[order.length - 1],
    };
    const lying = current.tray()[place];
    if (key in others) {
      mat.focusCoin(others[key]);
    } else if (key === "Enter" || key === " ") {
      holding.pick({ key: lying.coin, lying, middle: lying });
    } else if (key === "Delete" || key === "Backspace") {
      actions.remove(place);
    } else if (key in NUDGES) {
      actions.nudge(place, NUDGES[key]);
    } else {
      return false;
    }
    return true;
  }

  /**
   * Use a key, or what a screen reader does in its place.
   * @param {string} key
   * @param {EventTarget | null} target
   * @returns {boolean} whether it means something
   */
  function use(key, target) {
    if (!get("movable") || !(target instanceof Element)) {
      return false;
    }
    if (key === "Escape") {
      return holding.drop();
    }
    if (holding.isHeld()) {
      return false;
    }
    const focused = [...mat.kinds.children].indexOf(target);
    const kind = (key === "Enter" || key === " ") && focused >= 0 ? focused : Number(key) - 1;
    if (current.left()[kind]) {
      actions.add(kind);
      return true;
    }
    const place = mat.pieces().findIndex(({ handle }) => handle === target);
    return place >= 0 && useCoin(place, key);
  }

  onKeys(root, (key, event) => use(key, event.target), lifetime);
  // A click that no pointer made.
  mat.handles.addEventListener("click", (event) => {
    if (event.detail === 0) {
      use("Enter", event.target);
    }
  }, lifetime);
}

/** What keys and taps do on the chart, and screen readers in their own ways. */
import { onKeys } from "../shared/keys.js";

/**
 * @typedef {object} Parts of the widget
 * @property {import("../shared/frame.js").Frame} frame
 * @property {import("./current.js").Current} current
 * @property {import("./actions.js").Actions} actions
 * @property {ReturnType<typeof import("./grid.js").makeGrid>} grid
 * @property {HTMLElement} line which counts on when it is tapped
 * @property {() => void} paint
 */

/**
 * Listen to keys and taps.
 * @param {Parts} parts
 * @returns {void}
 */
export function useInput({ frame: { root, lifetime }, current, actions, grid, line, paint }) {
  const { isWriting, isMovable } = current;

  /**
   * Where a key leads from here.
   * @param {string} key
   * @returns {number | null} null when it does not go anywhere
   */
  function led(key) {
    const { here } = current;
    const { first, last, width } = current.settings();
    const column = (here - first) % width;
    /** @type {Record<string, number>} */
    const ways = {
      "ArrowRight": here + 1,
      "ArrowLeft": here - 1,
      "ArrowDown": here + width,
      "ArrowUp": here - width,
      "Home": here - column,
      "End": Math.min(last, here - column + width - 1),
      "Shift+Home": first,
      "Shift+End": last,
    };
    const to = ways[key];
    return to === undefined ? null : (to < first || to > last ? here : to);
  }

  /**
   * Use a key on the chart.
   * @param {string} key
   * @returns {boolean} whether it means something
   */
  function useKey(key) {
    const to = led(key);
    if (to !== null) {
      actions.go(to);
      return true;
    }
    if (!isMovable()) {
      return false;
    }
    if (isWriting()) {
      const means = /^([0-9]|Backspace|Delete|Enter)$/.test(key);
      if (means) {
        actions.type(key);
      }
      return means;
    }
    const { counted } = current.marks();
    if (key === "Enter") {
      actions.use(current.here);
    } else if (key === " ") {
      actions.count();
    } else if (key === "Backspace" && counted.length) {
      actions.use(counted[counted.length - 1]);
    } else {
      return key === "Backspace";
    }
    return true;
  }

  onKeys(root, (key, { target }) => {
    if (target instanceof Node && grid.area.contains(target)) {
      return useKey(key);
    }
    // Digits go to the chart from the keypad too.
    return isWriting() && isMovable() && /^([0-9]|Backspace)$/.test(key) && useKey(key);
  }, lifetime);
  grid.area.addEventListener("click", (event) => {
    const number = grid.numberAt(event.target);
    if (number !== null) {
      actions.go(number);
      if (isMovable()) {
        actions.use(number);
      }
    }
  }, lifetime);
  // A screen reader goes to cells in its own ways.
  grid.area.addEventListener("focusin", (event) => {
    const number = grid.numberAt(event.target);
    if (number !== null && number !== current.here) {
      actions.go(number);
    }
  }, lifetime);
  line.addEventListener("click", () => isWriting() || !isMovable() || actions.count(), lifetime);
  root.addEventListener("focusout", ({ relatedTarget }) => {
    if (current.open !== null && relatedTarget instanceof Element &&
      !root.contains(relatedTarget)) {
      current.open = null;
      paint();
    }
  }, lifetime);
}

/** The way back: what was, step by step. */

/**
 * A history of states. Keep states that are never changed in place.
 * @template State
 * @param {number} [limit] how many steps are kept
 * @returns {{
 *   remember: (state: State) => void,
 *   back: () => State | undefined,
 *   forget: () => void,
 *   readonly steps: number,
 * }} remember what is about to change; back() hands over the last and drops it
 */
export function makeHistory(limit = 200) {
  /** @type {State[]} */
  const past = [];
  return {
    remember(state) {
      past.push(state);
      if (past.length > limit) {
        past.shift();
      }
    },
    back: () => past.pop(),
    forget() {
      past.length = 0;
    },
    get steps() {
      return past.length;
    },
  };
}

/** The earlier states of something, for undo. */

/**
 * A history of states, which are never changed in place.
 * @template State
 * @param {number} [limit] how many states are stored at most
 * @returns {{
 *   push: (state: State) => void,
 *   back: () => State | undefined,
 *   forget: () => void,
 *   readonly steps: number,
 * }} store a state before it changes; take the last one back
 */
export function makeHistory(limit = 200) {
  /** @type {State[]} */
  const past = [];
  return {
    push(state) {
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

/** What was found of each place when it was checked, until something else is written there. */

/** @param {import("../shared/state/undoable.js").Undoable<import("./written.js").Sum>} state */
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

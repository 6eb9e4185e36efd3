/** What a finger, a button or a key does to the chart. */
import { MOST_DIGITS, blanks, tap, write } from "./count.js";
import { cellHint, countHint } from "./hints.js";

/**
 * @typedef {object} Parts of the widget
 * @property {import("../shared/frame.js").Frame} frame
 * @property {import("./current.js").Current} current
 * @property {import("../shared/state/undoable.js").Undoable<import("./count.js").Marks>} state
 * @property {ReturnType<typeof import("./grid.js").makeGrid>} grid
 * @property {() => void} paint
 * @property {() => void} stopBeat
 * @property {(trait: string, value: unknown) => void} choose
 *
 * @typedef {ReturnType<typeof makeActions>} Actions
 */

/** @param {Parts} parts */
export function makeActions({ frame, current, state, grid, paint, stopBeat, choose }) {
  const { get, say } = frame;
  const { settings, marks, isWriting, isRight, words, next } = current;

  /**
   * @param {number} number
   * @returns {string} what is said when it was counted
   */
  function counted(number) {
    return next() === null ? `${words(number)}. All is counted.` : words(number);
  }

  /** @param {number} number */
  function canBeWritten(number) {
    return blanks(settings()).includes(number) && (current.open === number || !isRight(number));
  }

  const actions = {
    /**
     * Go to a cell.
     * @param {number} number
     */
    go(number) {
      if (current.open !== number) {
        current.open = null;
      }
      current.here = number;
      paint();
      grid.focus(number);
      grid.follow(number);
    },

    /** @returns {boolean} whether there was a number to count */
    count() {
      const number = next();
      if (number === null) {
        say("All is counted.");
        return false;
      }
      // Scrolled first: nothing waits to be laid out yet.
      grid.follow(number);
      state.act(tap(marks(), number, settings()));
      say(counted(number));
      return true;
    },

    /**
     * A cell was tapped.
     * @param {number} number
     */
    use(number) {
      if (isWriting()) {
        const digits = marks().written[number];
        if (blanks(settings()).includes(number) && digits !== undefined && !isRight(number)) {
          say(cellHint(number, marks(), settings()));
        }
        return;
      }
      stopBeat();
      const before = marks().counted.length;
      if (get("panel") && before === 0) {
        choose("start", number);
      }
      if (!state.act(tap(marks(), number, settings()))) {
        paint();
      }
      const after = marks().counted.length;
      const hint = after === before ? countHint(marks(), settings()) : "Taken back.";
      say(after > before ? counted(number) : hint);
    },

    /**
     * A key of the keypad, or its like on the keyboard.
     * @param {string} key a digit, "Backspace", "Delete" or "Enter"
     */
    type(key) {
      const { here, open } = current;
      if (!canBeWritten(here)) {
        return;
      }
      if (key === "Enter") {
        close();
        return;
      }
      const digits = marks().written[here] ?? "";
      // Over what was not right a new number begins.
      const before = open === here || key === "Backspace" ? digits : "";
      current.open = here;
      const after = key === "Backspace" ? before.slice(0, -1) :
        (key === "Delete" ? "" : before + key);
      if (after.length <= MOST_DIGITS && !state.act(write(marks(), here, after))) {
        paint();
      }
    },

    undo() {
      stopBeat();
      current.open = null;
      if (state.undo()) {
        say("Undone.");
      }
    },

    reset() {
      stopBeat();
      current.open = null;
      if (state.reset()) {
        say("As it was at first.");
      }
    },
  };
  /** The number in the cell is written: it stays, or there is a hint. */
  function close() {
    const { here } = current;
    current.open = null;
    if (!isRight(here)) {
      paint();
      say(cellHint(here, marks(), settings()));
      return;
    }
    const left = blanks(settings()).filter((number) => !isRight(number));
    say(left.length ? `${words(here)}, right.` : "All is written.");
    actions.go(left.find((number) => number > here) ?? left[0] ?? here);
  }

  return actions;
}

/** What the chart, its traits and its cursor are just now. */
import { numberInWords } from "../shared/state/number_words.js";
import { blanks, marksLeft, nextNumber } from "./count.js";
import { cellHint, countHint } from "./hints.js";

/**
 * @typedef {import("./count.js").Settings} Settings
 * @typedef {import("./count.js").Marks} Marks
 *
 * @typedef {ReturnType<typeof makeCurrent>} Current
 */

const MOST_NUMBERS = 1001;

/** The traits that say what a chart is. */
export const SETTINGS = [
  "first", "last", "width", "step", "start", "direction", "hidden", "mode",
];

/**
 * @param {(trait: string) => any} get
 * @param {import("../shared/state/undoable.js").Undoable<Marks>} state
 */
export function makeCurrent(get, state) {
  const current = {
    // The cell that the keys are at, and the one that is written in just now.
    here: 0,
    /** @type {number | null} */
    open: null,

    /** @returns {boolean} whether there is a chart: of its two ends one may be set first */
    isChart() {
      const span = get("last") - get("first");
      return span > 0 && span < MOST_NUMBERS;
    },

    /** @returns {Settings} with nothing that is not on the chart */
    settings() {
      const now = Object.fromEntries(SETTINGS.map((name) => [name, get(name)]));
      const on = (/** @type {number | null} */ number) =>
        number !== null && number >= now.first && number <= now.last;
      return /** @type {any} */ ({
        ...now,
        start: on(now.start) ? now.start : null,
        hidden: Array.isArray(now.hidden) ? now.hidden.filter(on) : now.hidden,
      });
    },

    /** @returns {Marks} what was done, as far as it is on the chart */
    marks: () => marksLeft(state.now(), current.settings()),

    isWriting: () => get("mode") === "write",

    /** @returns {boolean} whether anything can be done to it; otherwise it is only looked at */
    isMovable: () => get("movable"),

    next: () => nextNumber(current.marks(), current.settings()),

    /** @param {number} number */
    words: (number) => numberInWords(number, get("vocabulary")),

    /** @param {number} number */
    isRight: (number) => current.marks().written[number] === String(number),

    /** @returns {number} where the keys begin */
    firstPlace() {
      const now = current.settings();
      const empty = blanks(now).find((number) => !current.isRight(number));
      return (current.isWriting() ? empty : current.next()) ?? now.first;
    },

    /**
     * @param {boolean} finished
     * @param {number} blank how many cells are empty yet
     * @returns {string} what is said beside the chart
     */
    sentence(finished, blank) {
      const { here, open } = current;
      const now = current.settings();
      const done = current.marks();
      if (!current.isMovable()) {
        return "";
      }
      if (current.isWriting()) {
        const digits = done.written[here];
        if (finished) {
          return blanks(now).length ? "All is written." : "Nothing is hidden.";
        }
        if (open === null && digits !== undefined && digits !== String(here)) {
          return cellHint(here, done, now);
        }
        return blank ? "Write what is missing." : "Look at the dashed cells.";
      }
      if (done.tapped !== null) {
        return countHint(done, now);
      }
      return finished ? "All is counted." : "";
    },
  };
  return current;
}

/** What helps on a chart, as Python's words/chart_hints.py says it: never the number itself. */
import { numberInWords } from "../shared/state/number_words.js";
import { blanks, nextNumber } from "./count.js";

/**
 * @typedef {import("./count.js").Settings} Settings
 * @typedef {import("./count.js").Marks} Marks
 */

/**
 * What tells whether a number stands on the chart for all to read. One that is hidden does when
 * it was written rightly or, where nothing is written, counted.
 * @param {Marks} marks
 * @param {Settings} settings
 * @returns {(number: number) => boolean}
 */
export function readable({ counted, written }, settings) {
  const covered = new Set(blanks(settings));
  const seen = new Set(counted);
  return (number) => !covered.has(number) ||
    (settings.mode === "write" ? written[number] === String(number) : seen.has(number));
}

/**
 * What helps to find the number of a cell, from the nearest that can be read.
 * @param {number} number
 * @param {Marks} marks
 * @param {Settings} settings
 * @returns {string} such as "One more than 34."
 */
export function cellHint(number, marks, settings) {
  const { first, last, width } = settings;
  const canBeRead = readable(marks, settings);
  for (const other of [number - 1, number + 1, number - width, number + width]) {
    if (other >= first && other <= last && canBeRead(other)) {
      const gap = numberInWords(Math.abs(number - other));
      const way = number > other ? "more" : "less";
      return `${gap[0].toUpperCase()}${gap.slice(1)} ${way} than ${other}.`;
    }
  }
  for (let before = number - 1; before >= first; before -= 1) {
    if (canBeRead(before)) {
      return `Count on from ${before}.`;
    }
  }
  for (let after = number + 1; after <= last; after += 1) {
    if (canBeRead(after)) {
      return `Count back from ${after}.`;
    }
  }
  return `The chart goes from ${first} to ${last}.`;
}

/**
 * What helps to find the number that is counted next.
 * @param {Marks} marks
 * @param {Settings} settings
 * @returns {string} such as "Count on 5 from 10."
 */
export function countHint(marks, settings) {
  const coming = nextNumber(marks, settings);
  if (coming === null) {
    return "All is counted.";
  }
  if (marks.counted.length === 0) {
    return `Begin with ${coming}.`;
  }
  const way = settings.direction === "back" ? "back" : "on";
  return `Count ${way} ${settings.step} from ${marks.counted[marks.counted.length - 1]}.`;
}

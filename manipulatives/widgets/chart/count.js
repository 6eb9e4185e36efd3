/**
 * Counting on a chart, as Python's counting.py, chart_cells.py and chart.py in maths/number/ do it:
 * the numbers of a count, what is hidden, what was done and what is true of it.
 *
 * @typedef {object} Settings
 * @property {number} first
 * @property {number} last
 * @property {number} width how many numbers a row has
 * @property {number} step
 * @property {number | null} start null for the first multiple of the step on the way
 * @property {"forward" | "back"} direction
 * @property {string | number[]} hidden a pattern by name, or the numbers themselves
 * @property {"count" | "wipe" | "write"} mode
 *
 * @typedef {object} Marks what was done to a chart
 * @property {number[]} counted in their order
 * @property {number | null} tapped the number tapped last, when it was not the next one
 * @property {Record<string, string>} written digits by number
 */

import CELLS from "../../data/hidden_cells.json" with { type: "json" };

export const MOST_DIGITS = 5;

/**
 * The numbers of a chart or a row, in order.
 * @param {{ first: number, last: number }} ends
 * @returns {number[]}
 */
export function cells({ first, last }) {
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}

/**
 * The numbers of the count, in the order in which they are said.
 * @param {Settings} settings
 * @returns {number[]}
 */
export function numbers({ first, last, step, start, direction }) {
  const back = direction === "back";
  const multiple = back ? Math.floor(last / step) * step : Math.ceil(first / step) * step;
  const usual = multiple >= first && multiple <= last ? multiple : (back ? last : first);
  const found = [];
  for (let at = start ?? usual; at >= first && at <= last; at += back ? -step : step) {
    found.push(at);
  }
  return found;
}

/**
 * The numbers that are hidden, in order.
 * @param {Settings} settings
 * @returns {number[]}
 */
export function blanks(settings) {
  const { hidden, first } = settings;
  switch (hidden) {
    case "none":
      return [];
    case "thirds":
      return cells(settings).filter((number) => (number - first) % 3 === 2);
    case "cross":
      return shape(CELLS.cross, settings);
    case "patch":
      return shape(CELLS.patch, settings);
    case "counts":
      return inOrder(numbers(settings));
    case "all":
      return cells(settings);
    default:
      return inOrder(/** @type {number[]} */ (hidden));
  }
}

/**
 * The number that is counted next.
 * @param {Marks} marks
 * @param {Settings} settings
 * @returns {number | null} null at the end
 */
export function nextNumber({ counted }, settings) {
  if (counted.length === 0) {
    return numbers(settings)[0];
  }
  const { first, last, step, direction } = settings;
  const coming = counted[counted.length - 1] + (direction === "back" ? -step : step);
  return coming >= first && coming <= last && !counted.includes(coming) ? coming : null;
}

/**
 * What was done after a number of the chart was tapped: the next number is counted, the one
 * counted last is taken back, any other is only noted.
 * @param {Marks} marks
 * @param {number} number
 * @param {Settings} settings
 * @returns {Marks}
 */
export function tap(marks, number, settings) {
  const { counted } = marks;
  if (number === nextNumber(marks, settings)) {
    return { ...marks, counted: [...counted, number], tapped: null };
  }
  if (number === counted[counted.length - 1]) {
    return { ...marks, counted: counted.slice(0, -1), tapped: null };
  }
  return { ...marks, tapped: number };
}

/**
 * What was done after digits were written into a cell.
 * @param {Marks} marks
 * @param {number} number
 * @param {string} digits none clear the cell
 * @returns {Marks}
 */
export function write(marks, number, digits) {
  const written = Object.fromEntries(
    Object.entries(marks.written).filter(([other]) => other !== String(number)),
  );
  return { ...marks, written: digits ? { ...written, [number]: digits } : written };
}

/**
 * What was done, as far as it is on a chart of these numbers.
 * @param {Partial<Marks>} marks what is left out was not done
 * @param {Settings} settings
 * @returns {Marks}
 */
export function marksLeft({ counted = [], tapped = null, written = {} }, { first, last }) {
  const on = (/** @type {number} */ number) => number >= first && number <= last;
  return {
    counted: counted.filter(on),
    tapped: tapped !== null && on(tapped) ? tapped : null,
    written: Object.fromEntries(Object.entries(written).filter(([number]) => on(Number(number)))),
  };
}

/**
 * What is true of a chart, as goals and mistakes ask for it.
 * @param {Marks} marks
 * @param {Settings} settings
 * @returns {Facts}
 */
export function facts(marks, settings) {
  const { counted, tapped, written } = marks;
  const all = numbers(settings);
  const cellsToFill = blanks(settings);
  const right = cellsToFill.filter((number) => written[number] === String(number)).length;
  const blank = cellsToFill.filter((number) => written[number] === undefined).length;
  const inStep = counted.every((number, index) => number === all[index]);
  return {
    counted: counted.length,
    at: counted[counted.length - 1] ?? null,
    next: nextNumber(marks, settings),
    tapped,
    in_step: inStep,
    total: all.length,
    right,
    wrong: cellsToFill.length - right - blank,
    blank,
    finished: settings.mode === "write"
      ? right === cellsToFill.length
      : inStep && counted.length === all.length,
  };
}

/**
 * @param {number[][]} offsets
 * @param {Settings} settings
 * @returns {number[]} the numbers at these offsets from the middle of the chart, in order
 */
function shape(offsets, { first, last, width }) {
  const row = Math.floor(Math.floor((last - first) / width) / 2);
  const column = Math.floor(Math.min(width - 1, last - first) / 2);
  return inOrder(offsets
    .filter(([down, right]) => column + right >= 0 && column + right < width && row + down >= 0)
    .map(([down, right]) => first + (row + down) * width + column + right)
    .filter((number) => number <= last));
}

/**
 * @param {number[]} some
 * @returns {number[]} a sorted copy
 */
function inOrder(some) {
  return [...some].sort((one, other) => one - other);
}

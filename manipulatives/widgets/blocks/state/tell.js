/**
 * What is written and said about blocks, as Python's place_value.py, trades.py and mats.py in
 * maths/number/ give it.
 */
import { LARGEST, PLACES, WORTH, beside, named } from "./places.js";
import { numberOf, piecesOf, tradeBetween } from "./places.js";
import { MINUS } from "../../shared/signs.js";

/**
 * @typedef {import("./places.js").Blocks} Blocks
 * @typedef {import("./places.js").Mat} Mat
 * @typedef {import("./places.js").Place} Place
 * @typedef {import("./places.js").Trade} Trade
 */

/**
 * What the blocks of each place are worth, the largest place first.
 * @param {Blocks} blocks
 * @param {boolean} [zeros] with the parts that are zero, below the largest
 * @returns {{ place: Place, worth: number }[]} one part, 0, when there are no blocks
 */
export function partsOf(blocks, zeros = false) {
  const first = PLACES.findIndex((place) => blocks[place] > 0);
  const parts = (first < 0 ? ["ones"] : PLACES.slice(first)).map((each) => {
    const place = /** @type {Place} */ (each);
    return { place, worth: blocks[place] * WORTH[place] };
  });
  return zeros || first < 0 ? parts : parts.filter(({ worth }) => worth > 0);
}

/**
 * A number as the sum of what the blocks of each place are worth.
 * @param {Blocks} blocks
 * @param {boolean} [zeros]
 * @returns {string} such as "20 + 15"
 */
export function partitioned(blocks, zeros) {
  return partsOf(blocks, zeros).map(({ worth }) => worth).join(" + ");
}

/**
 * So many blocks of one place.
 * @param {number} count
 * @param {Place} place
 * @returns {string} such as "1 ten"
 */
export function some(count, place) {
  return `${count} ${named(place, count)}`;
}

/**
 * How many blocks there are of each place.
 * @param {Blocks} blocks
 * @returns {string} such as "2 tens, 15 ones"
 */
export function counted(blocks) {
  const there = PLACES.filter((place) => blocks[place] > 0);
  return there.map((place) => some(blocks[place], place)).join(", ") || "no blocks";
}

/**
 * What a trade says.
 * @param {Trade} trade
 * @returns {string} such as "10 ones = 1 ten"
 */
export function tradeEquation({ place, way, times }) {
  const other = /** @type {Place} */ (beside(place, way));
  const [gave, got] = way > 0 ? [10, 1] : [1, 10];
  return `${some(gave * times, place)} = ${some(got * times, other)}`;
}

/**
 * The equation of a step on one mat.
 * @param {Blocks} before
 * @param {Blocks} after
 * @returns {string} nothing when there was no step
 */
export function stepEquation(before, after) {
  const equal = `${partitioned(before)} = ${partitioned(after)}`;
  const trade = tradeBetween(before, after);
  if (trade) {
    return `${tradeEquation(trade)}; ${equal}`;
  }
  const [old, now] = [numberOf(before), numberOf(after)];
  if (old === now) {
    return PLACES.every((place) => before[place] === after[place]) ? "" : equal;
  }
  return `${old} ${now > old ? "+" : MINUS} ${Math.abs(now - old)} = ${now}`;
}

/**
 * The equation of a step on one mat or two.
 * @param {Mat} before
 * @param {Mat} after
 * @returns {string} nothing when there was none to write
 */
export function matEquation(before, after) {
  if (before.length !== after.length) {
    return "";
  }
  const steps = before.map((was, at) => stepEquation(was, after[at]));
  if (steps.length > 1 && steps.every(Boolean) && piecesOf(after[1]) === 0) {
    const [first, second] = before.map(numberOf);
    if (numberOf(after[0]) === first + second) {
      return `${first} + ${second} = ${first + second}`;
    }
  }
  return steps.find(Boolean) ?? "";
}

/**
 * What steps that follow each other are told as one by: more, or fewer, blocks of one column.
 * @param {Mat} before
 * @param {Mat} after
 * @returns {string} nothing when the step stands alone
 */
export function runOf(before, after) {
  const runs = after.flatMap((blocks, at) => PLACES.flatMap((place) => {
    const more = blocks[place] - (before[at]?.[place] ?? 0);
    return more ? [`${at} ${place} ${Math.sign(more)}`] : [];
  }));
  return runs.length === 1 ? runs[0] : "";
}

/**
 * Whether one mat comes from another by one step, and not by beginning anew.
 * @param {Mat} before
 * @param {Mat} after
 * @returns {boolean} a trade, more or fewer blocks of one place, or blocks that changed mats
 */
export function isStep(before, after) {
  if (before.length !== after.length) {
    return false;
  }
  const changes = before.map((was, at) => PLACES.map((place) => after[at][place] - was[place]));
  const unchanged = PLACES.every((_, index) =>
    changes.reduce((sum, each) => sum + each[index], 0) === 0);
  const touched = changes.flat().filter(Boolean).length;
  return unchanged || touched < 2 ||
    (touched === 2 && before.some((was, at) => tradeBetween(was, after[at]) !== null));
}

/**
 * Why there is not a block more, or less.
 * @param {Place} place
 * @param {number} more
 * @returns {string} a sentence for a child
 */
export function whyNoStep(place, more) {
  return more > 0 ? `A mat holds ${LARGEST} at most.` : `There are no ${place}.`;
}

/**
 * Why a key does nothing to a column.
 * @param {Blocks} blocks
 * @param {Place} place
 * @param {string} key
 * @param {{ trades: boolean, columns: Place[] }} rules
 * @returns {string} a sentence for a child, or nothing
 */
export function whyNoKey(blocks, place, key, { trades, columns }) {
  if (!key.startsWith("Shift+Arrow")) {
    return whyNoStep(place, /Down|-|Delete|Backspace/.test(key) ? -1 : 1);
  }
  if (!trades || !/Left|Right/.test(key)) {
    return "";
  }
  if (key.endsWith("Left")) {
    const larger = beside(place, 1);
    return place === columns[0] || !larger
      ? `There is no column above the ${place}.`
      : `Ten ${place} make a ${named(larger, 1)}. You have ${blocks[place]}.`;
  }
  return place === "ones" ? "A one does not break." : `There are no ${place} to break.`;
}

/**
 * @typedef {object} Told what is told of two mats
 * @property {"compare" | "add" | "take"} pair what they are there for
 * @property {boolean} numeral whether the numbers are told
 * @property {boolean} result whether the sign between them, or what comes out, is told
 */

/**
 * The number of a mat, or the sentence about two.
 * @param {Mat} mat
 * @param {string} sign between them
 * @param {Told} told
 * @returns {(string | null)[]} numbers, names and signs one by one; null is left blank for a child
 */
export function sentence(mat, sign, { pair, numeral, result }) {
  const [first, second] = mat.map(numberOf);
  if (mat.length === 1) {
    return numeral ? [String(first)] : [];
  }
  if (!numeral && (!result || pair === "take")) {
    return [];
  }
  const terms = numeral ? [first, second].map(String) : ["A", "B"];
  switch (pair) {
    case "compare":
      return [terms[0], result ? sign : null, terms[1]];
    case "add":
      return [terms[0], "+", terms[1], "=", result ? String(first + second) : null];
    default:
      return [String(first + second), MINUS, terms[1], "=", result ? terms[0] : null];
  }
}

/** What is said of a sum: its squares, its blocks, and the next step where a place is not right. */
import { NAMES, answerOf, facts, resultOf } from "./written.js";
import { MINUS } from "../shared/signs.js";

/**
 * @typedef {import("./written.js").Sum} Sum
 * @typedef {import("./written.js").Row} Row
 * @typedef {import("./written.js").Blocks} Blocks
 */

/**
 * @param {Sum} sum
 * @returns {string} the sign of its operation, as it is written
 */
export function signOf({ operation }) {
  return operation === "+" ? "+" : MINUS;
}

/**
 * @param {Sum} sum
 * @returns {string} such as "47 + 38"
 */
export function inSigns(sum) {
  return sum.numbers.join(` ${signOf(sum)} `);
}

/**
 * @param {Sum} sum
 * @param {Row} row
 * @returns {string} what a row is called
 */
export function rowName(sum, row) {
  if (row === "marks") {
    return sum.operation === "+" ? "Carry" : "Rewritten";
  }
  return row === "parts" ? "Part" : "Answer";
}

/**
 * @param {number} count
 * @param {number} column
 * @returns {string} such as "1 ten"
 */
export function some(count, column) {
  return `${count} ${count === 1 ? NAMES[column].slice(0, -1) : NAMES[column]}`;
}

const ROLES = /** @type {Record<string, string>} */ ({
  carried: "Carried", parts: "Parts", answer: "Answer", left: "Left", taken: "Taken away",
  here: "Here", rest: "To go",
});

/**
 * @param {Sum} sum
 * @param {string} role of a row of blocks
 * @returns {string} what it is called
 */
export function roleName(sum, role) {
  return ROLES[role] ?? String(sum.numbers[Number(role) - 1]);
}

/**
 * @param {Sum} sum
 * @param {Blocks} blocks
 * @returns {string} all of them in words
 */
export function blocksInWords(sum, blocks) {
  return Object.entries(blocks).map(([role, counts]) => {
    const there = counts.map((count, column) => (count ? some(count, column) : ""));
    return `${roleName(sum, role)}: ${there.filter(Boolean).reverse().join(", ") || "none"}.`;
  }).join(" ");
}

/**
 * @param {Sum} sum
 * @param {number} column
 * @returns {boolean | null} whether its digit is right; null where there is none
 */
export function placeRight(sum, column) {
  return /** @type {boolean | null} */ (facts(sum)[`${NAMES[column].replace(" ", "_")}_right`]);
}

/**
 * @param {Sum} sum
 * @param {number[]} columns that are checked
 * @returns {string} what is said to them
 */
export function verdict(sum, columns) {
  const checked = columns.filter((column) => placeRight(sum, column) !== null);
  const again = checked.find((column) => !placeRight(sum, column));
  if (again !== undefined) {
    return `Look at the ${NAMES[again]} once more.`;
  }
  if (answerOf(sum) === resultOf(sum)) {
    return "All places are right.";
  }
  return checked.length ? `Right so far: ${listed(checked)}.` : "Write a digit first.";
}

/**
 * @param {number[]} columns
 * @returns {string} their names
 */
function listed(columns) {
  return columns.map((column) => NAMES[column]).join(", ");
}

/**
 * What shapes are called: Python's words/shape_names.py in the browser.
 *
 * @typedef {import("./paper.js").Wording} Wording
 * @typedef {import("./properties.js").Properties} Properties
 */

import WORDS from "../../../data/shape_words.json" with { type: "json" };

/** @type {Record<string, string>} */
const BY_SIDES = WORDS.sides;

/**
 * @param {Properties | null} found
 * @param {number} sides
 * @param {Wording} wording
 * @returns {Record<string, boolean>} which of the kinds of quadrilaterals a polygon is
 */
export function kindsOf(found, sides, { trapezoid }) {
  const parallelogram = Boolean(found?.parallelogram);
  const rectangle = parallelogram && Boolean(found?.right.length);
  const rhombus = parallelogram && found?.equal[0].length === 4;
  const pairs = found && sides === 4 ? found.parallel.length : 0;
  return {
    square: rectangle && rhombus,
    rectangle,
    rhombus,
    parallelogram,
    trapezoid: pairs === 1 || (pairs > 1 && trapezoid === "inclusive"),
    kite: Boolean(found?.kite),
  };
}

/**
 * @param {Properties} found
 * @param {number} sides
 * @param {Wording} wording
 * @returns {string[]} everything that a polygon is called, the most particular name first
 */
export function namesOf(found, sides, wording) {
  const kinds = Object.entries(kindsOf(found, sides, wording))
    .filter(([, holds]) => holds)
    .map(([kind]) => inWords(kind, wording));
  const star = isStar(found, sides) ? ["star"] : [];
  return [...kinds, ...star, BY_SIDES[sides] ?? `polygon with ${sides} sides`];
}

/**
 * @param {string} kind
 * @param {{ vocabulary: string }} wording
 * @returns {string}
 */
export function inWords(kind, { vocabulary }) {
  return kind === "trapezoid" && vocabulary === "uk" ? "trapezium" : kind;
}

/**
 * @param {Properties} found
 * @param {number} sides
 * @returns {boolean} whether points and notches take turns, with four points or more
 */
export function isStar({ tips }, sides) {
  return sides >= 8 && 2 * tips.length === sides &&
    tips.every((tip, index) => tip === tips[0] + 2 * index);
}

/**
 * @param {import("./outline.js").Outline} outline
 * @returns {boolean} whether it is a closed chain of five strokes that all cross
 */
export function isPentagram({ closed, corners, meetings }) {
  return closed && corners.length === 5 && meetings.length === 5 &&
    meetings.every(({ kind }) => kind === "crossing");
}

/** A shape in words for those who do not see it, and what to do next in words for those who do. */
import { DIRECTIONS } from "./cuts.js";
import { pairs, place, way } from "./paper.js";
import { stepInWords } from "./words.js";

/**
 * @typedef {import("./paper.js").Grid} Grid
 * @typedef {import("./paper.js").Shape} Shape
 */

/** @type {Record<string, string[]>} */
const NAMES = { "circle": ["Centre", "Edge"], "quarter circle": ["Corner", "End"] };
const BEGINNING = [
  "Tap to put the first point.", "Tap where the side ends.", "Put the next point.",
];

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @returns {string} the drawing side by side, without a number that could be asked for
 */
export function pictureOf({ points, closed, curve }, grid) {
  if (curve || !points.length) {
    return curve ? `A ${curve}.` : "Nothing is drawn yet.";
  }
  const steps = pairs(points).slice(0, closed ? points.length : -1)
    .map((two) => `${stepInWords(way(...two), grid)};`);
  return [closed ? "A closed shape." : "An open shape.", ...steps].join(" ");
}

/**
 * @param {Shape} shape
 * @param {number} index
 * @returns {string} what a point is called
 */
export function pointName({ points: { length: many }, curve }, index) {
  return NAMES[curve ?? ""]?.[index] ?? `Point ${index + 1} of ${many}`;
}

/**
 * @param {number[]} point
 * @param {Grid} grid
 * @returns {string} where it is
 */
export function placeName(point, grid) {
  const { x } = place(point, grid);
  return `${grid === "plain" ? x : x / 100} across, ${point[1]} down`;
}

/**
 * @param {Shape} shape
 * @param {number[]} point of a cut
 * @param {Grid} grid
 * @returns {string} where it is
 */
export function cutName({ curve }, point, grid) {
  if (!curve) {
    return placeName(point, grid);
  }
  return point[1] ? `edge, ${point[0]} of ${DIRECTIONS} around` : "centre";
}

/**
 * @param {Shape} shape that is being drawn
 * @returns {string} what to do next, or nothing when it is closed
 */
export function whatNext({ points: { length: many }, closed }) {
  return closed ? "" : BEGINNING[many] ?? "Tap the first point to close.";
}

/** One look at a shape, from which everything else is told. */
import { outlineOf } from "./outline.js";
import { propertiesOf } from "./properties.js";
import { sharesOf } from "./shares.js";

/**
 * @typedef {object} Look
 * @property {import("./outline.js").Outline} outline of a curve it means nothing
 * @property {import("./properties.js").Properties | null} found what is true of a polygon
 * @property {import("./shares.js").Shares | null} shares
 */

/**
 * @param {import("./paper.js").Shape} shape
 * @param {import("./paper.js").Grid} grid
 * @returns {Look}
 */
export function looked(shape, grid) {
  const outline = outlineOf(shape, grid);
  const polygon = shape.curve ? null : outline.polygon;
  return {
    outline,
    found: polygon && propertiesOf(polygon, grid),
    shares: sharesOf(shape, grid, shape.curve ? null : outline),
  };
}

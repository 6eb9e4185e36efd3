/**
 * Where a cut can go through: the points of the paper on and in a polygon, and the directions and
 * the centre of a circle.
 *
 * @typedef {import("./paper.js").Grid} Grid
 * @typedef {import("./paper.js").Shape} Shape
 * @typedef {import("./paper.js").Spot} Spot
 * @typedef {{ point: number[], spot: Spot }} CutPoint a point of a cut, and where it is
 */
import { DIRECTIONS, isInside, onEdges } from "./cuts.js";
import { cutSpot } from "./marks.js";
import { dots, range, same, way } from "./paper.js";
import { wholeOf } from "./shares.js";

/** @type {Record<string, [number, number]>} */
const WAYS = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowDown: [0, 1],
  ArrowUp: [0, -1],
};

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @returns {CutPoint[]}
 */
export function cutPoints(shape, grid) {
  return pointsOf(shape, grid).map((point) => ({ point, spot: cutSpot(shape, grid, point) }));
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @returns {number[][]}
 */
function pointsOf(shape, grid) {
  const whole = wholeOf(shape, grid);
  if (!whole) {
    return [];
  }
  if (shape.curve) {
    return [[0, 0], ...range(DIRECTIONS).map((direction) => [direction, 1])];
  }
  if (grid !== "plain") {
    return dots(grid).filter((dot) => onEdges(dot, [whole]) || isInside(dot, whole));
  }
  // Without dots, whole twelfths of a parallelogram's sides; else only the corners.
  const [corner, next, , last] = whole;
  if (whole.length !== 4 || !same(way(next, whole[2]), way(corner, last))) {
    return whole;
  }
  const [along, across] = [way(corner, next), way(corner, last)];
  return range(13).flatMap((one) => range(13).map((other) => corner.map((start, axis) =>
    start + (along[axis] * one + across[axis] * other) / 12)))
    .filter((point) => point.every(Number.isInteger));
}

/**
 * @param {CutPoint[]} points
 * @param {Spot} spot
 * @returns {CutPoint | undefined} the nearest
 */
export function nearestPoint(points, { x, y }) {
  const far = (/** @type {CutPoint} */ { spot }) => (spot.x - x) ** 2 + (spot.y - y) ** 2;
  return [...points].sort((one, other) => far(one) - far(other))[0];
}

/**
 * @param {CutPoint[]} points
 * @param {CutPoint} from
 * @param {string} key such as "ArrowUp"
 * @returns {CutPoint} the next in that direction, or the same
 */
export function pointToward(points, from, key) {
  const [right, below] = WAYS[key];
  const ahead = points.map((each) => {
    const [x, y] = [each.spot.x - from.spot.x, each.spot.y - from.spot.y];
    const along = x * right + y * below;
    return { each, along, cost: along + Math.abs(x * below) + Math.abs(y * right) };
  }).filter(({ along, cost }) => along > 1 && cost <= 3 * along);
  return ahead.sort((one, other) => one.cost - other.cost)[0]?.each ?? from;
}

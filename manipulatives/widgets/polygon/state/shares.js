/**
 * Shapes cut into shares: Python's maths/shapes/shares.py in the browser. Cuts that do not fit
 * are left out.
 *
 * @typedef {import("./paper.js").Grid} Grid
 * @typedef {import("./paper.js").Shape} Shape
 * @typedef {import("./cuts.js").Ring} Ring
 * @typedef {{ rings: Ring[], many: number, equal: boolean, alike: boolean }} Shares
 */
import SHARES from "../../../data/shares.json" with { type: "json" };
import { RIM, chord, cutAlong, dotsBetween, onCircle, rim } from "./cuts.js";
import { outlineOf } from "./outline.js";
import { cross, inner, pairs, range, same, way } from "./paper.js";

const CLOSE = 1e-9;
/** @type {Record<"parallelogram" | "circle", Record<string, number[][][][]>>} */
const WAYS = SHARES;

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @returns {Ring | null} what is cut, or null when it is no polygon and no circle
 */
export function wholeOf(shape, grid) {
  if (shape.curve) {
    return shape.curve === "circle" ? rim() : null;
  }
  return outlineOf(shape, grid).polygon;
}

/**
 * @param {Shape} shape
 * @param {Ring[]} rings
 * @param {number[][]} cut
 * @returns {Ring[] | string} the shares after a cut, or why it does not fit
 */
export function cutBy({ curve }, rings, cut) {
  return curve ? cutAlong(rings, cut.map(onCircle), chord) : cutAlong(rings, cut, dotsBetween);
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @param {import("./outline.js").Outline | null} [outline] if it is known already
 * @returns {Shares | null} the shares that a shape was cut into
 */
export function sharesOf(shape, grid, outline) {
  const whole = outline ? outline.polygon : wholeOf(shape, grid);
  if (!whole) {
    return null;
  }
  if (!shape.cuts) {
    return { rings: [whole], many: 1, equal: true, alike: true };
  }
  let rings = [whole];
  for (const cut of shape.cuts) {
    const after = cutBy(shape, rings, cut);
    rings = typeof after === "string" ? rings : after;
  }
  const areas = rings.map(shape.curve ? areaInCircle : areaOf);
  const differ = Math.max(...areas) - Math.min(...areas);
  const fits = shape.curve ? near : (/** @type {number[]} */ one, /** @type {number[]} */ other) =>
    inner(one, one, grid) === inner(other, other, grid);
  const [first, ...others] = rings.map(withoutStraight);
  return {
    rings,
    many: rings.length,
    equal: shape.curve ? differ < CLOSE : differ === 0,
    alike: others.every((other) => congruent(first, other, fits)),
  };
}

/**
 * @param {Shape} shape
 * @param {Grid} grid
 * @param {number} many
 * @returns {number[][][][]} ways to cut a circle or a parallelogram into so many equal shares
 */
export function waysToShare(shape, grid, many) {
  if (shape.curve === "circle") {
    return WAYS.circle[many];
  }
  const polygon = wholeOf(shape, grid);
  if (polygon?.length !== 4 || !same(way(polygon[1], polygon[2]), way(polygon[0], polygon[3]))) {
    return [];
  }
  const [corner] = polygon;
  const [along, across] = [way(corner, polygon[1]), way(corner, polygon[3])];
  return WAYS.parallelogram[many]
    .map((cuts) => cuts.map((cut) => cut.map(([one, other]) =>
      corner.map((start, axis) => start + (along[axis] * one + across[axis] * other) / 12))))
    .filter((cuts) => cuts.flat(2).every(Number.isInteger) && fit(shape, polygon, cuts));
}

/**
 * @param {Shape} shape
 * @param {Ring} whole
 * @param {number[][][]} cuts
 * @returns {boolean} whether they can all be made
 */
function fit(shape, whole, cuts) {
  /** @type {Ring[] | string} */
  let rings = [whole];
  for (const cut of cuts) {
    rings = typeof rings === "string" ? rings : cutBy(shape, rings, cut);
  }
  return typeof rings !== "string";
}

/**
 * @param {Ring} ring
 * @returns {number}
 */
function areaOf(ring) {
  return Math.abs(pairs(ring).reduce((sum, [one, other]) => sum + cross(one, other), 0));
}

/**
 * @param {Ring} ring
 * @returns {number} in squares of the radius
 */
function areaInCircle(ring) {
  const edge = rim();
  const part = (2 * Math.PI) / RIM;
  const at = (/** @type {number[]} */ point) => edge.findIndex((each) => same(each, point));
  const twice = pairs(ring).map(([start, end]) => {
    if (at(start) < 0 || at(end) < 0) {
      return 0;
    }
    const turn = (at(end) - at(start) + RIM) % RIM;
    return Math.sin(turn * part) + (turn === 1 ? part - Math.sin(part) : 0);
  });
  return twice.reduce((sum, each) => sum + each) / 2;
}

/**
 * @param {number[]} one
 * @param {number[]} other
 * @returns {boolean} whether two steps in a circle are equally long
 */
function near(one, other) {
  return Math.abs(Math.hypot(...one) - Math.hypot(...other)) < 10;
}

/**
 * @param {Ring} ring
 * @returns {Ring}
 */
function withoutStraight(ring) {
  const many = ring.length;
  return ring.filter((point, at) =>
    cross(way(ring[(at + many - 1) % many], point), way(point, ring[(at + 1) % many])) !== 0);
}

/**
 * @param {Ring} one
 * @param {Ring} other
 * @param {(one: number[], other: number[]) => boolean} fits
 * @returns {boolean} whether they fit onto each other, turned or turned over
 */
function congruent(one, other, fits) {
  const many = one.length;
  if (other.length !== many) {
    return false;
  }
  const all = range(many);
  return [other, [...other].reverse()].some((ring) => all.some((shift) =>
    all.every((i) => range(i).every((j) => fits(
      way(one[i], one[j]),
      way(ring[(i + shift) % many], ring[(j + shift) % many]),
    )))));
}

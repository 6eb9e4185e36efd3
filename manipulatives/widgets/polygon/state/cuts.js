/**
 * Cutting a shape along lines, in whole numbers: Python's maths/shapes/cuts.py in the browser. A
 * share is the ring of its corners, and a circle is a ring of many points.
 *
 * @typedef {number[][]} Ring
 * @typedef {(start: number[], end: number[]) => number[][]} Between
 */
import { cross, pairs, range, rounded, same, way } from "./paper.js";

const RADIUS = 10000;
export const DIRECTIONS = 24;
export const RIM = 2 * DIRECTIONS;
const CENTRE = [0, 0];

/** @returns {Ring} the edge of a circle, clockwise from the top */
export function rim() {
  const half = range(RIM / 2).map((index) => {
    const turn = (2 * Math.PI * index) / RIM;
    return [rounded(RADIUS * Math.sin(turn)), -rounded(RADIUS * Math.cos(turn))];
  });
  return [...half, ...half.map(([across, down]) => [-across, -down])];
}

/**
 * @param {number[]} point [direction, 1] on the edge, or [0, 0]
 * @returns {number[]} where it is
 */
export function onCircle([direction, far]) {
  return far ? rim()[2 * direction] : CENTRE;
}

/** @type {Between} where a cut of a circle may meet others */
export function chord(start, end) {
  const through = !same(start, CENTRE) && start[0] + end[0] === 0 && start[1] + end[1] === 0;
  return through ? [start, CENTRE, end] : [start, end];
}

/** @type {Between} where a cut of a polygon may meet others */
export function dotsBetween(start, end) {
  const [across, down] = way(start, end);
  let [steps, rest] = [Math.abs(across), Math.abs(down)];
  while (rest) {
    [steps, rest] = [rest, steps % rest];
  }
  return range(steps + 1).map((step) =>
    [start[0] + (across / (steps || 1)) * step, start[1] + (down / (steps || 1)) * step]);
}

/**
 * @param {Ring[]} rings
 * @param {number[][]} line the points that a cut goes through
 * @param {Between} between
 * @returns {Ring[] | string} the shares after one more cut, or why it does not fit
 */
export function cutAlong(rings, line, between) {
  const steps = stepsOf(line);
  const tangled = steps.some((one, index) => same(...one) || steps.slice(index + 1).some((other) =>
    crosses(one, other) || other.some((point) => same(point, one[0])) ||
    (other.some((point) => same(point, one[1])) && !same(one[1], other[0]))));
  if (tangled) {
    return "A cut does not cross or touch itself.";
  }
  const path = [line[0], ...steps.flatMap((step) => between(...step).slice(1))];
  let shares = rings;
  if (!onEdges(path[0], shares)) {
    return "A cut begins on an edge.";
  }
  let run = path.slice(0, 1);
  for (const point of path.slice(1)) {
    run.push(point);
    if (onEdges(point, shares)) {
      const after = split(shares, run);
      if (typeof after === "string") {
        return after;
      }
      shares = after;
      run = [point];
    }
  }
  return run.length > 1 ? "A cut ends on an edge." : shares;
}

/**
 * @param {Ring[]} rings
 * @param {number[][]} run a line that meets edges at its two ends only
 * @returns {Ring[] | string}
 */
function split(rings, run) {
  const [start, end] = [run[0], run[run.length - 1]];
  const middle = [start[0] + run[1][0], start[1] + run[1][1]];
  for (const ring of rings) {
    const edges = pairs(ring);
    if (edges.some((edge) => isBetween(start, edge) && isBetween(run[1], edge))) {
      return rings;
    }
    const doubled = ring.map(([across, down]) => [2 * across, 2 * down]);
    if (isInside(middle, doubled) || onEdges(middle, [doubled])) {
      const bends = run.filter((here, index) => index > 0 && index < run.length - 1 &&
        cross(way(run[index - 1], here), way(here, run[index + 1])) !== 0);
      const bent = stepsOf([start, ...bends, end]);
      if (bent.some((step) => edges.some((edge) => crosses(step, edge)))) {
        return "Cuts cross at a dot.";
      }
      const whole = from(withPoint(withPoint(ring, start), end), start);
      const at = whole.findIndex((point) => same(point, end));
      const one = [...whole.slice(0, at + 1), ...[...bends].reverse()];
      const other = [...whole.slice(at), start, ...bends];
      return rings.flatMap((each) => (each === ring ? [one, other] : [each]));
    }
  }
  return "A cut stays inside the shape.";
}

/**
 * @param {number[][]} chain
 * @returns {[number[], number[]][]}
 */
function stepsOf(chain) {
  return pairs(chain).slice(0, -1);
}

/**
 * @param {Ring} ring
 * @param {number[]} start
 * @returns {Ring} the same from another corner on
 */
function from(ring, start) {
  const at = ring.findIndex((point) => same(point, start));
  return [...ring.slice(at), ...ring.slice(0, at)];
}

/**
 * @param {Ring} ring
 * @param {number[]} point of its edge
 * @returns {Ring} the ring with it among the corners
 */
function withPoint(ring, point) {
  if (ring.some((corner) => same(corner, point))) {
    return ring;
  }
  const at = pairs(ring).findIndex((edge) => isBetween(point, edge));
  return [...ring.slice(0, at + 1), point, ...ring.slice(at + 1)];
}

/**
 * @param {number[]} point
 * @param {Ring[]} rings
 * @returns {boolean} whether it is on an edge of one of them
 */
export function onEdges(point, rings) {
  return rings.some((ring) => pairs(ring).some((edge) => isBetween(point, edge)));
}

/**
 * @param {number[]} point
 * @param {[number[], number[]]} line
 * @returns {boolean}
 */
function isBetween(point, [start, end]) {
  return cross(way(start, end), way(start, point)) === 0 && point.every((part, index) =>
    part >= Math.min(start[index], end[index]) && part <= Math.max(start[index], end[index]));
}

/**
 * @param {number[]} point
 * @param {Ring} ring
 * @returns {boolean} whether a point that is on no edge is inside
 */
export function isInside(point, ring) {
  const passed = pairs(ring).filter(([start, end]) =>
    start[1] > point[1] !== end[1] > point[1] &&
    cross(way(start, end), way(start, point)) > 0 === end[1] < start[1]);
  return passed.length % 2 === 1;
}

/**
 * @param {[number[], number[]]} one
 * @param {[number[], number[]]} other
 * @returns {boolean} whether two lines cross with both ends of each beside the other
 */
function crosses(one, other) {
  const [left, right] = other.map((point) => cross(way(...one), way(one[0], point)));
  const [low, high] = one.map((point) => cross(way(...other), way(other[0], point)));
  return left * right < 0 && low * high < 0;
}

/**
 * What the outline of a shape is: its sides, its corners, and where sides meet by mistake. Python's
 * maths/shapes/outline.py in the browser.
 *
 * @typedef {import("./paper.js").Grid} Grid
 * @typedef {import("./paper.js").Shape} Shape
 * @typedef {{ kind: string, one: number, other: number }} Meeting two sides that meet by mistake
 *
 * @typedef {object} Outline
 * @property {number[][]} turns where the corners are
 * @property {number[]} corners which points they are
 * @property {number[]} repeated which points lie where the one before them lies
 * @property {number[]} straight which are in the middle of a straight side
 * @property {boolean} closed
 * @property {number} sides how many there are
 * @property {Meeting[]} meetings
 * @property {string | null} fault
 * @property {number[][] | null} polygon its corners when it is a polygon
 */
import { cross, inner, nearNought, pairs, range, same, way } from "./paper.js";

const WORST = ["overlap", "crossing", "touching"];

/**
 * @param {Shape} shape with straight sides
 * @param {Grid} grid
 * @returns {Outline}
 */
export function outlineOf({ points, closed }, grid) {
  const distinct = apart(points, closed);
  const corners = turning(points, distinct, grid, closed);
  const turns = corners.map((index) => points[index]);
  const sides = sidesOf(turns, closed);
  const meetings = meetingsOf(sides, closed && turns.length > 2, grid);
  const fault = faultOf(points, distinct, corners, meetings, closed);
  return {
    turns,
    corners,
    repeated: range(points.length).filter((index) => !distinct.includes(index)),
    straight: distinct.filter((index) => !corners.includes(index)),
    closed,
    sides: sides.length,
    meetings,
    fault,
    polygon: closed && !fault ? turns : null,
  };
}

/**
 * @param {number[][]} turns
 * @param {boolean} closed
 * @returns {[number[], number[]][]} from corner to corner
 */
export function sidesOf(turns, closed) {
  return closed && turns.length > 2 ? pairs(turns) : pairs(turns).slice(0, -1);
}

/**
 * @param {number[][]} points
 * @param {boolean} closed
 * @returns {number[]} the points that lie elsewhere than the one before them
 */
function apart(points, closed) {
  const distinct = range(points.length)
    .filter((index) => index === 0 || !same(points[index], points[index - 1]));
  const elsewhere = distinct.filter((index) => !same(points[index], points[0]));
  const last = elsewhere.length ? distinct.indexOf(elsewhere[elsewhere.length - 1]) : 0;
  return closed ? distinct.slice(0, last + 1) : distinct;
}

/**
 * All points are looked at before one is left out, so it does not matter where the chain begins.
 * @param {number[][]} points
 * @param {number[]} distinct
 * @param {Grid} grid
 * @param {boolean} closed
 * @returns {number[]} the points that are corners
 */
function turning(points, distinct, grid, closed) {
  const many = distinct.length;
  const at = (/** @type {number} */ index) => points[distinct[(index + many) % many]];
  const corners = distinct.filter((_, index) => {
    const inside = closed ? many > 2 : index > 0 && index < many - 1;
    return !inside || !goesOn(way(at(index - 1), at(index)), way(at(index), at(index + 1)), grid);
  });
  return corners.length === many ? corners : turning(points, corners, grid, closed);
}

/**
 * @param {number[]} one
 * @param {number[]} other
 * @param {Grid} grid
 * @returns {boolean} whether a step goes straight on after another
 */
function goesOn(one, other, grid) {
  const squares = inner(one, one, grid) * inner(other, other, grid);
  return inner(one, other, grid) > 0 && nearNought(2 * cross(one, other), squares, grid);
}

/**
 * @param {[number[], number[]][]} sides
 * @param {boolean} returns
 * @param {Grid} grid
 * @returns {Meeting[]}
 */
function meetingsOf(sides, returns, grid) {
  /** @type {Meeting[]} */
  const found = [];
  sides.forEach((first, one) => {
    for (let other = one + 1; other < sides.length; other += 1) {
      const second = sides[other];
      const last = returns && one === 0 && other === sides.length - 1;
      const [before, after] = last ? [second, first] : [first, second];
      const kind = other === one + 1 || last
        ? folded(way(...before), way(...after), grid)
        : meeting(first, second);
      if (kind) {
        found.push({ kind, one, other });
      }
    }
  });
  return found;
}

/**
 * @param {number[]} one
 * @param {number[]} other
 * @param {Grid} grid
 * @returns {string | null} "overlap" when the chain goes back on itself
 */
function folded(one, other, grid) {
  return cross(one, other) === 0 && inner(one, other, grid) < 0 ? "overlap" : null;
}

/**
 * @param {[number[], number[]]} one
 * @param {[number[], number[]]} other
 * @returns {string | null} how two sides meet that are no neighbours
 */
function meeting(one, other) {
  const [left, right] = other.map((point) => sideOf(one, point));
  const [low, high] = one.map((point) => sideOf(other, point));
  if (!left && !right && !low && !high) {
    const [a, b] = one;
    const length = Math.abs(b[0] - a[0]) + Math.abs(b[1] - a[1]);
    const [start, end] = other.map((point) => along(one, point)).sort((c, d) => c - d);
    if (end < 0 || start > length) {
      return null;
    }
    return end === 0 || start === length ? "touching" : "overlap";
  }
  if (left * right > 0 || low * high > 0) {
    return null;
  }
  return left * right < 0 && low * high < 0 ? "crossing" : "touching";
}

/**
 * @param {[number[], number[]]} side
 * @param {number[]} point
 * @returns {number} 1, 0 or -1: right of a line, on it, or left of it
 */
function sideOf([start, end], point) {
  return Math.sign(cross(way(start, end), way(start, point)));
}

/**
 * @param {[number[], number[]]} side
 * @param {number[]} point on the line
 * @returns {number} how far along it is
 */
function along([start, end], point) {
  const [right, below] = way(start, point);
  const [across, down] = way(start, end).map(Math.sign);
  return right * across + below * down;
}

/**
 * @param {number[][]} points
 * @param {number[]} distinct
 * @param {number[]} corners
 * @param {Meeting[]} meetings
 * @param {boolean} closed
 * @returns {string | null}
 */
function faultOf(points, distinct, corners, meetings, closed) {
  if (closed && distinct.length < 3) {
    return "few";
  }
  const steps = distinct.map((index) => way(points[distinct[0]], points[index]));
  if (closed && (corners.length < 3 || steps.every((step) => cross(steps[1], step) === 0))) {
    return "flat";
  }
  return WORST.find((kind) => meetings.some((each) => each.kind === kind)) ?? null;
}

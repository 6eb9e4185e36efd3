/**
 * The papers that shapes are drawn on, and what can be measured on each: Python's
 * maths/shapes/papers.py in the browser. A point counts dots on "square" and "triangle" paper
 * (there the second number goes down to the right) and hundredths of a space on "plain" paper.
 *
 * @typedef {"plain" | "square" | "triangle"} Grid
 * @typedef {[number, number]} Point
 * @typedef {{ x: number, y: number }} Spot a place in hundredths of a space, from the top left dot
 *
 * @typedef {object} Shape
 * @property {number[][]} points
 * @property {boolean} closed
 * @property {string} [curve]
 * @property {number[][][]} [cuts]
 *
 * @typedef {{ vocabulary: string, trapezoid: string }} Wording
 */

export const SPACES = 8;
export const UNIT = 100;
const ROW = (UNIT * Math.sqrt(3)) / 2;
const TOP = (SPACES * UNIT - SPACES * ROW) / 2;
const ANGLE_SLACK = 365;
const LENGTH_SLACK = [400, 441];

/**
 * @param {Grid} grid
 * @returns {Point[]} the dots row by row; plain paper has none
 */
export function dots(grid) {
  return range(grid === "plain" ? 0 : SPACES + 1).flatMap((down) => {
    const [first, last] = ends(down, grid);
    return range(last - first + 1).map((at) => /** @type {Point} */ ([first + at, down]));
  });
}

/**
 * @param {number} down
 * @param {Grid} grid
 * @returns {[number, number]} the first and the last point of a row
 */
export function ends(down, grid) {
  if (grid === "triangle") {
    return [-Math.floor(down / 2), SPACES - Math.floor((down + 1) / 2)];
  }
  return [0, grid === "square" ? SPACES : SPACES * UNIT];
}

/**
 * @param {number[]} point
 * @param {Grid} grid
 * @returns {boolean} whether it is on the paper
 */
export function onPaper([across, down], grid) {
  const [first, last] = ends(down, grid);
  return down >= 0 && down <= (grid === "plain" ? last : SPACES) && across >= first &&
    across <= last;
}

/**
 * @param {number[]} point
 * @param {Grid} grid
 * @returns {Spot} where it is
 */
export function place([across, down], grid) {
  if (grid === "triangle") {
    return { x: UNIT * across + (UNIT * down) / 2, y: TOP + ROW * down };
  }
  const scale = grid === "square" ? UNIT : 1;
  return { x: scale * across, y: scale * down };
}

/**
 * @param {Spot} spot
 * @param {Grid} grid
 * @returns {Point} the point of the paper that is nearest, of two the upper, left one
 */
export function nearest({ x, y }, grid) {
  if (grid !== "triangle") {
    const scale = grid === "square" ? UNIT : 1;
    const last = ends(0, grid)[1];
    return [within(rounded(x / scale), 0, last), within(rounded(y / scale), 0, last)];
  }
  const row = Math.floor((y - TOP) / ROW);
  const [upper, lower] = [row, row + 1].map((down) => {
    const at = within(down, 0, SPACES);
    /** @type {Point} */
    const point = [within(rounded(x / UNIT - at / 2), ...ends(at, grid)), at];
    const spot = place(point, grid);
    return { point, far: (spot.x - x) ** 2 + (spot.y - y) ** 2 };
  });
  return lower.far < upper.far ? lower.point : upper.point;
}

/**
 * @param {number} number
 * @returns {number} whole; halves go up
 */
export function rounded(number) {
  return Math.floor(number + 0.5);
}

/**
 * @param {number} number
 * @param {number} least
 * @param {number} most
 * @returns {number}
 */
export function within(number, least, most) {
  return Math.min(Math.max(number, least), most);
}

/**
 * @param {number[]} start
 * @param {number[]} end
 * @returns {Point} the step from one point to the other
 */
export function way(start, end) {
  return [end[0] - start[0], end[1] - start[1]];
}

/**
 * @param {number[]} one
 * @param {number[]} other
 * @param {Grid} grid
 * @returns {number} twice the inner product of two steps; 0 at right angles
 */
export function inner([a, b], [c, d], grid) {
  return 2 * (a * c + b * d) + (grid === "triangle" ? a * d + b * c : 0);
}

/**
 * @param {number[]} one
 * @param {number[]} other
 * @returns {number} the area between two steps, above 0 when the second turns to the right
 */
export function cross([a, b], [c, d]) {
  return a * d - b * c;
}

/**
 * @param {number} one
 * @param {number} other
 * @param {Grid} grid
 * @returns {boolean} whether two squares of lengths count as equal
 */
export function alike(one, other, grid) {
  return grid === "plain"
    ? LENGTH_SLACK[0] * Math.max(one, other) <= LENGTH_SLACK[1] * Math.min(one, other)
    : one === other;
}

/**
 * @param {number} amount a product of two steps, doubled
 * @param {number} squares twice the square of the one length times twice that of the other
 * @param {Grid} grid
 * @returns {boolean} whether it counts as 0
 */
export function nearNought(amount, squares, grid) {
  return grid === "plain" ? ANGLE_SLACK * amount * amount <= squares : amount === 0;
}

/**
 * @param {number[]} one
 * @param {number[]} other
 * @returns {boolean} whether two points are the same
 */
export function same(one, other) {
  return one[0] === other[0] && one[1] === other[1];
}

/**
 * @param {number} many
 * @returns {number[]} 0, 1, 2 and so on
 */
export function range(many) {
  return Array.from({ length: many }, (_, index) => index);
}

/**
 * @template Item
 * @param {Item[]} ring
 * @returns {[Item, Item][]} each with the one after it, the last with the first
 */
export function pairs(ring) {
  return ring.map((one, index) => [one, ring[(index + 1) % ring.length]]);
}

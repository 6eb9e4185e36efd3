/**
 * The strokes of a pen as plain data, independent of the size of the screen: a stroke is a list of
 * numbers, three for each point. x and y are in ten-thousandths of the board's width and height, so
 * that a ring stays around its word on another screen; the weight is in hundredths of the usual
 * thickness.
 *
 * @typedef {number[]} Stroke x, y, weight, x, y, weight, …
 * @typedef {{ width: number, height: number }} Size in pixels
 */

const UNITS = 10_000;
const USUAL = 100;
// Shortest step between points, in the same units: a resting finger trembles less than this.
const STEP = 8;
// More points than a hand draws without lifting the pen, and more strokes than a board can hold.
const MOST_POINTS = 3000;
const MOST_STROKES = 600;
// As a share of the board's shorter side, like chalk: letters of 25 mm on a board of 700 mm have
// lines of some 5 mm. From practice.
const THICKNESS = 0.0075;
const THINNEST_PX = 3;
// Thickness changes in steps too small to see, in hundredths of the usual one.
const THICKNESS_STEP = 10;
const MOST_POINTS_IN_LINE = 60;

/**
 * A point of a stroke. Only a pen reports its pressure; a mouse and most touches report a constant.
 * @param {{ x: number, y: number, pressure: number, kind: string }} given where on the board in
 *   pixels, 0 to 1 for the pressure, and "pen", "touch" or "mouse"
 * @param {Size} size of the board
 * @returns {number[]} x, y, weight
 */
export function pointOf({ x, y, pressure, kind }, { width, height }) {
  const weight = kind === "pen" && pressure > 0 ? 0.4 + 1.2 * Math.min(1, pressure) : 1;
  return [(x / width) * UNITS, (y / height) * UNITS, weight * USUAL].map(Math.round);
}

/**
 * A stroke with one more point, or the same stroke when the point is too close to the last.
 * @param {Stroke} stroke
 * @param {number[]} point
 * @returns {Stroke}
 */
export function withPoint(stroke, point) {
  const [x, y] = stroke.slice(-3);
  const near = stroke.length > 0 && Math.hypot(point[0] - x, point[1] - y) < STEP;
  return near || stroke.length >= 3 * MOST_POINTS ? stroke : [...stroke, ...point];
}

/**
 * The strokes with one more; a full board loses its oldest.
 * @param {Stroke[]} strokes
 * @param {Stroke} stroke
 * @returns {Stroke[]}
 */
export function withStroke(strokes, stroke) {
  return [...strokes, stroke].slice(-MOST_STROKES);
}

/**
 * The strokes that are left after wiping a part of the board, the oldest first.
 * @param {Stroke[]} strokes
 * @param {number} done parts that are wiped
 * @param {number} of all parts
 * @returns {Stroke[]}
 */
export function afterWiping(strokes, done, of) {
  const share = of > 0 ? Math.max(0, Math.min(1, done / of)) : 1;
  return strokes.slice(Math.floor(strokes.length * share));
}

/**
 * The valid strokes in stored data.
 * @param {any} data
 * @returns {Stroke[]}
 */
export function strokesOf(data) {
  const rows = Array.isArray(data) ? data.slice(-MOST_STROKES) : [];
  return rows.filter((row) => Array.isArray(row) && row.length > 0 && row.length % 3 === 0 &&
    row.length <= 3 * MOST_POINTS && row.every(Number.isFinite));
}

/**
 * A stroke as lines to draw, each of one thickness, with overlapping round ends. Each line is
 * short, so that adding a point to a long stroke is as fast as to a short one.
 * @param {Stroke} stroke
 * @param {Size} size of the board now
 * @returns {{ d: string, width: number }[]} `d` and `stroke-width` of each path
 */
export function linesOf(stroke, size) {
  const thick = Math.max(THINNEST_PX, THICKNESS * Math.min(size.width, size.height));
  const dots = inPixels(stroke, size);
  const [first, ...rest] = dots;
  let from = first;
  let level = 0;
  let length = 0;
  /** @type {{ d: string, width: number }[]} */
  const made = [];
  // A tap is a line of no length.
  for (const [index, dot] of (rest.length ? rest : dots).entries()) {
    if (levelOf(dot) !== level || length === MOST_POINTS_IN_LINE) {
      level = levelOf(dot);
      length = 0;
      made.push({ d: `M${at(from)}`, width: rounded(((level * THICKNESS_STEP) / USUAL) * thick) });
    }
    const next = rest[index + 1];
    // A quick hand gives few points: join them by curves, without corners.
    const to = next ? { ...dot, x: (dot.x + next.x) / 2, y: (dot.y + next.y) / 2 } : dot;
    made[made.length - 1].d += next ? `Q${at(dot)} ${at(to)}` : `L${at(to)}`;
    from = to;
    length += 1;
  }
  return made;
}

/** @typedef {{ x: number, y: number, weight: number }} Dot */

/**
 * @param {Stroke} stroke
 * @param {Size} size
 * @returns {Dot[]}
 */
function inPixels(stroke, { width, height }) {
  /** @type {Dot[]} */
  const dots = [];
  for (let place = 0; place < stroke.length; place += 3) {
    const [x, y, weight] = stroke.slice(place, place + 3);
    dots.push({ x: (x / UNITS) * width, y: (y / UNITS) * height, weight });
  }
  return dots;
}

/**
 * @param {Dot} dot
 * @returns {number}
 */
function levelOf({ weight }) {
  return Math.max(1, Math.round(weight / THICKNESS_STEP));
}

/**
 * @param {Dot} dot
 * @returns {string}
 */
function at({ x, y }) {
  return `${rounded(x)} ${rounded(y)}`;
}

/**
 * @param {number} number
 * @returns {number}
 */
function rounded(number) {
  return Math.round(10 * number) / 10;
}

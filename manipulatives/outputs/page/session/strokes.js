/**
 * What a pen wrote, as plain data that fits every screen: a stroke is a row of numbers, three a
 * point. Across and down are ten-thousandths of the board's breadth and height, so that a ring
 * stays around its word on another screen; the weight is in hundredths of the usual thickness.
 *
 * @typedef {number[]} Stroke x, y, weight, x, y, weight, …
 * @typedef {{ width: number, height: number }} Size in pixels
 */

const UNITS = 10_000;
const USUAL = 100;
// A finger at rest trembles less than this, and a screen of 4K shows no more.
const STEP = 8;
// More points than a hand draws without lifting the pen, and more strokes than a board can hold.
const MOST_POINTS = 3000;
const MOST_STROKES = 600;
// Of the board's shorter side, as a line of chalk is: 25 mm chalk board letters have lines of some
// 5 mm on a board of 700 mm. From practice.
const THICKNESS = 0.0075;
const THINNEST = 3;
// Thickness goes in steps that no eye sees as steps, of hundredths of the usual one.
const STEPS = 10;
// Of points, in one line of a stroke.
const LONGEST = 60;

/**
 * A point of a stroke. Only a pen tells how hard it is pressed; a mouse and most fingers say
 * always the same.
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
 * A stroke with one point more, or the same one when the point adds nothing.
 * @param {Stroke} stroke
 * @param {number[]} point
 * @returns {Stroke}
 */
export function grown(stroke, point) {
  const [x, y] = stroke.slice(-3);
  const near = stroke.length > 0 && Math.hypot(point[0] - x, point[1] - y) < STEP;
  return near || stroke.length >= 3 * MOST_POINTS ? stroke : [...stroke, ...point];
}

/**
 * All strokes with one more; where the board is full, the oldest goes.
 * @param {Stroke[]} strokes
 * @param {Stroke} stroke
 * @returns {Stroke[]}
 */
export function written(strokes, stroke) {
  return [...strokes, stroke].slice(-MOST_STROKES);
}

/**
 * What is left when a part of the board is wiped, from the first stroke on.
 * @param {Stroke[]} strokes
 * @param {number} done of how many parts
 * @param {number} of
 * @returns {Stroke[]}
 */
export function wiped(strokes, done, of) {
  const share = of > 0 ? Math.max(0, Math.min(1, done / of)) : 1;
  return strokes.slice(Math.floor(strokes.length * share));
}

/**
 * Strokes that came from elsewhere; what is none is left out.
 * @param {any} data
 * @returns {Stroke[]}
 */
export function strokesOf(data) {
  const rows = Array.isArray(data) ? data.slice(-MOST_STROKES) : [];
  return rows.filter((row) => Array.isArray(row) && row.length > 0 && row.length % 3 === 0 &&
    row.length <= 3 * MOST_POINTS && row.every(Number.isFinite));
}

/**
 * A stroke as lines to draw, each with one thickness; their round ends lie over each other. They
 * are short, so that a long stroke costs no more to draw on than one that has just begun.
 * @param {Stroke} stroke
 * @param {Size} size of the board now
 * @returns {{ d: string, width: number }[]} what a path takes for its `d` and its `stroke-width`
 */
export function lines(stroke, size) {
  const thick = Math.max(THINNEST, THICKNESS * Math.min(size.width, size.height));
  const dots = inPixels(stroke, size);
  const [first, ...rest] = dots;
  let from = first;
  let level = 0;
  let length = 0;
  /** @type {{ d: string, width: number }[]} */
  const made = [];
  // A tap is a line to where it began.
  for (const [index, dot] of (rest.length ? rest : dots).entries()) {
    if (levelOf(dot) !== level || length === LONGEST) {
      level = levelOf(dot);
      length = 0;
      made.push({ d: `M${at(from)}`, width: short(((level * STEPS) / USUAL) * thick) });
    }
    const next = rest[index + 1];
    // A quick hand gives few points: the way between them is bent, not broken.
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
  return Math.max(1, Math.round(weight / STEPS));
}

/**
 * @param {Dot} dot
 * @returns {string}
 */
function at({ x, y }) {
  return `${short(x)} ${short(y)}`;
}

/**
 * @param {number} number
 * @returns {number}
 */
function short(number) {
  return Math.round(10 * number) / 10;
}

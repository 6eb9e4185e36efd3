/**
 * The form of each block, in units, the side of a one; the origin is its top left corner. A ten is
 * ten ones in a row, a hundred ten tens beside each other, a thousand ten hundreds one behind the
 * other, seen a little from above and from the right.
 *
 * @typedef {import("./places.js").Place} Place
 * @typedef {import("./rows.js").Spot} Spot
 */

import BLOCK from "../../../data/blocks.json" with { type: "json" };

const FRONT = 10 * BLOCK.back;

/**
 * The outlines of a block, from below to above.
 * @param {Place} place
 * @returns {{ part: "face" | "side" | "lines", d: string }[]} each with what it is to the block
 */
export function outlines(place) {
  switch (place) {
    case "ones":
      return [{ part: "face", d: box(0, 1, 1) }];
    case "tens":
      return [{ part: "face", d: box(0, 1, 10) }, { part: "lines", d: grid(0, 1, 10) }];
    case "hundreds":
      return [{ part: "face", d: box(0, 10, 10) }, { part: "lines", d: grid(0, 10, 10) }];
    default:
      return [
        { part: "side", d: `M0 ${FRONT}L${FRONT} 0H12V10L10 12V${FRONT}Z` },
        { part: "lines", d: slices() },
        { part: "face", d: box(FRONT, 10, 10) },
        { part: "lines", d: grid(FRONT, 10, 10) },
      ];
  }
}

/**
 * Where the ten smaller blocks lie that a block is made of, from below to above.
 * @param {Place} place
 * @returns {Spot[]} none for a one
 */
export function piecesIn(place) {
  if (place === "ones") {
    return [];
  }
  return Array.from({ length: 10 }, (_, at) => {
    const back = (9 - at) * BLOCK.back;
    return {
      thousands: { x: back, y: FRONT - back },
      hundreds: { x: at, y: 0 },
      tens: { x: 0, y: at },
    }[place];
  });
}

/**
 * @param {number} top
 * @param {number} wide
 * @param {number} high
 * @returns {string} a rectangle with rounded corners
 */
function box(top, wide, high) {
  const r = BLOCK.corner;
  const turn = (/** @type {string} */ to) => `a${r} ${r} 0 0 1 ${to}`;
  return `M${r} ${top}H${wide - r}${turn(`${r} ${r}`)}V${top + high - r}${turn(`${-r} ${r}`)}` +
    `H${r}${turn(`${-r} ${-r}`)}V${top + r}${turn(`${r} ${-r}`)}Z`;
}

/**
 * @param {number} top
 * @param {number} wide
 * @param {number} high
 * @returns {string} the lines between the ones
 */
function grid(top, wide, high) {
  const near = BLOCK.inset;
  let lines = "";
  for (let at = 1; at < high; at += 1) {
    lines += `M${near} ${top + at}H${wide - near}`;
  }
  for (let at = 1; at < wide; at += 1) {
    lines += `M${at} ${top + near}V${top + high - near}`;
  }
  return lines;
}

/** @returns {string} the lines between the hundreds of a thousand */
function slices() {
  let lines = "";
  for (let at = 1; at < 10; at += 1) {
    const back = round(at * BLOCK.back);
    const top = round(FRONT - back);
    lines += `M${back} ${top}H${10 + back}V${round(12 - back)}`;
  }
  return lines;
}

/**
 * @param {number} length
 * @returns {number} to a hundredth
 */
function round(length) {
  return Math.round(100 * length) / 100;
}

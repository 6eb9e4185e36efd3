/**
 * The piece of a number line that is shown, as Python's maths/number/line.py chooses it, and where
 * everything on it stands. Lengths are in pixels, from the left end of the drawing.
 *
 * @typedef {import("./count.js").Settings} Settings
 * @typedef {{ low: number, high: number }} Piece its first and its last number
 */

const SHORT = 21;
const LEAST_PAGE = 20;
const STEPS_A_PAGE = 5;
const MOST_MARKS = 60;
const MOST_APART = 10;
const APART = [1, 2, 5, 10, 20, 50, 100, 200, 500];

/**
 * The piece where the last hop is to be seen.
 * @param {Settings} settings
 * @param {number[]} counted
 * @param {number} coming where the count begins
 * @returns {Piece}
 */
export function piece({ first, last, step }, counted, coming) {
  if (last - first < SHORT) {
    return { low: first, high: last };
  }
  const here = counted.length ? counted[counted.length - 1] : coming;
  const before = counted[counted.length - 2] ?? here;
  const hop = Math.min(step, Math.abs(here - before) || step);
  const page = Math.max(LEAST_PAGE, STEPS_A_PAGE * hop);
  const low = Math.floor(Math.min(before, here) / page) * page;
  return { low: Math.max(first, low - hop), high: Math.min(last, low + page + hop) };
}

/**
 * How far the marks of a piece are apart.
 * @param {Piece} piece
 * @returns {number} 1, or 10 or 100 where it is long
 */
export function marksApart({ low, high }) {
  let apart = 1;
  while (Math.floor((high - low) / apart) > MOST_MARKS) {
    apart *= 10;
  }
  return apart;
}

/**
 * How far the numbers below a piece are apart, so that all can be read: as far as the counts,
 * where these are ones, twos, fives or tens and have room.
 * @param {Piece} piece
 * @param {number} length how long the piece is
 * @param {number} room how much of the length the widest number needs
 * @param {number} step
 * @returns {number}
 */
export function numbersApart({ low, high }, length, room, step) {
  const each = length / (high - low);
  if (step <= MOST_APART && APART.includes(step) && step * each >= room) {
    return step;
  }
  return APART.find((apart) => apart * each >= room) ?? APART[APART.length - 1];
}

/**
 * The multiples of a number on a piece.
 * @param {Piece} piece
 * @param {number} apart
 * @returns {number[]}
 */
export function multiplesOn({ low, high }, apart) {
  const found = [];
  for (let at = Math.ceil(low / apart) * apart; at <= high; at += apart) {
    found.push(at);
  }
  return found;
}

/**
 * The hops that can be seen on a piece, as one line.
 * @param {number[]} counted
 * @param {Piece} piece
 * @param {(number: number) => number} place where a number stands
 * @param {number} base how far down the line is
 * @param {number} height of a hop at most
 * @returns {string} the `d` of a path
 */
export function hopsOutline(counted, { low, high }, place, base, height) {
  const parts = [];
  for (let index = 1; index < counted.length; index += 1) {
    const [from, to] = [counted[index - 1], counted[index]];
    if (Math.max(from, to) >= low && Math.min(from, to) <= high) {
      const [left, right] = [place(from), place(to)];
      // A curve of this kind rises to three quarters of what it aims at.
      const aim = base - Math.min(height, Math.abs(right - left) * 0.7) / 0.75;
      parts.push(`M${left} ${base}C${left} ${aim} ${right} ${aim} ${right} ${base}`);
    }
  }
  return parts.join("");
}

/**
 * Where coins lie on a mat: never covering each other unreadably, and lined up for counting.
 * Python's maths/money/places.py finds the same places; everything is reckoned in whole numbers of
 * tenths of a millimetre.
 *
 * @typedef {import("./coinage.js").Coin} Coin
 * @typedef {import("./coinage.js").Currency} Currency
 *
 * @typedef {object} Lying
 * @property {string} coin its key
 * @property {number} x where its middle is, from the left of the mat
 * @property {number} y the same, from the top
 *
 * @typedef {{ coin: Coin, x: number }[]} Row
 */
import { coinOf, keyOf } from "./coinage.js";

/** How wide and how high the mat is. */
export const MAT = 1400;
export const LINE = 80;
const EDGE = 40;
const CROWDED_EDGE = 10;
const GAP = 20;
const STEP = 10;
const NUDGE = 50;
const SHELVES = 4;
const MOST_COINS = 100;

/**
 * How far a coin reaches from its middle, rounded up.
 * @param {Coin} coin
 * @returns {number} tenths of a millimetre
 */
export function reach(coin) {
  return Math.ceil(hundredths(coin) / 20);
}

/**
 * Where a coin comes to lie that is put down at a place: there, or as near as it leaves all coins
 * readable.
 * @param {string} key
 * @param {number} x
 * @param {number} y
 * @param {Lying[]} others
 * @param {Currency} money
 * @param {boolean} [clear] whether it is to leave a gap beside every other
 * @returns {Lying | null} null when there is no room
 */
export function placeNear(key, x, y, others, money, clear = false) {
  const coin = coinOf(money, key);
  const [least, most] = [reach(coin), MAT - reach(coin)];
  const [left, top] = [x, y].map((part) => Math.min(Math.max(Math.round(part), least), most));
  const limits = limitsOf(coin, others, money, clear);
  let best = [Infinity];
  let found = null;
  for (let ring = 0; ring < MAT / STEP && others.length < MOST_COINS; ring += 1) {
    if (ring * ring > best[0]) {
      break;
    }
    for (const [i, j] of square(ring)) {
      const at = [left + STEP * i, top + STEP * j];
      // Of two as near, the one more nearly beside it, and then the one on the right.
      const near = [i * i + j * j, j * j, -i - j];
      const inside = Math.min(...at) >= least && Math.max(...at) <= most;
      if (inside && before(near, best) && isFree(at[0], at[1], limits)) {
        best = near;
        found = { coin: key, x: at[0], y: at[1] };
      }
    }
  }
  return found;
}

/**
 * Where the next coin goes by itself: beside the coins before it, on one of four lines.
 * @param {string} key
 * @param {Lying[]} others
 * @param {Currency} money
 * @returns {Lying | null} null when there is no room
 */
export function nextPlace(key, others, money) {
  const coin = coinOf(money, key);
  const r = reach(coin);
  const limits = limitsOf(coin, others, money, true);
  const beside = others.map((other) => other.x + reach(coinOf(money, other.coin)) + r + GAP);
  const columns = [EDGE + r, ...beside].filter((x) => x + r + EDGE <= MAT).sort((a, b) => a - b);
  for (let shelf = 1; shelf <= SHELVES && others.length < MOST_COINS; shelf += 1) {
    const y = (shelf * MAT) / SHELVES - EDGE - r;
    const x = columns.find((column) => isFree(column, y, limits));
    if (x !== undefined) {
      return { coin: key, x, y };
    }
  }
  return placeNear(key, MAT / 2, MAT / 2, others, money);
}

/**
 * Where a coin is after a step of five millimetres, or as many as it takes to come past others.
 * @param {Lying} lying
 * @param {number} right -1, 0 or 1
 * @param {number} down -1, 0 or 1
 * @param {Lying[]} others
 * @param {Currency} money
 * @returns {Lying | null} null when it cannot go that way
 */
export function nudged({ coin, x, y }, right, down, others, money) {
  for (let far = NUDGE; far < MAT; far += NUDGE) {
    const next = placeNear(coin, x + right * far, y + down * far, others, money);
    if (next && (next.x - x) * right + (next.y - y) * down >= NUDGE / 2) {
      return next;
    }
  }
  return null;
}

/**
 * Coins in rows, the largest worth first.
 * @param {string[]} keys
 * @param {Currency} money
 * @returns {Lying[] | null} null when the mat has no room for that
 */
export function linedUp(keys, money) {
  const coins = keys.map((key) => coinOf(money, key)).sort((a, b) => b.worth - a.worth);
  const rows = rowsOf(coins, {});
  const crowded = rowsOf(coins, { cover: true });
  return (rows.length <= 1 ? stacked(rows, LINE, EDGE) : null) ??
    stacked(rowsOf(coins, { byKind: true }), LINE, EDGE) ??
    stacked(rows, LINE, EDGE) ??
    stacked(crowded, LINE, CROWDED_EDGE) ??
    stacked(crowded, 0, CROWDED_EDGE) ??
    stacked(crowded, null, CROWDED_EDGE);
}

/**
 * @param {Coin[]} coins
 * @param {{ byKind?: boolean, cover?: boolean }} how each kind in rows of its own; covering
 *   each other a little
 * @returns {Row[]}
 */
function rowsOf(coins, { byKind, cover }) {
  const edge = cover ? CROWDED_EDGE : EDGE;
  /** @type {Row[]} */
  const rows = [];
  for (const coin of coins) {
    const last = rows.at(-1)?.at(-1);
    if (last) {
      const alike = last.coin.worth === coin.worth;
      const beside = reach(last.coin) + reach(coin) + (alike ? GAP : 2 * GAP);
      const x = last.x + (cover ? covers(last.coin, coin) : beside);
      if (x + reach(coin) + edge <= MAT && (alike || !byKind)) {
        rows.at(-1)?.push({ coin, x });
        continue;
      }
    }
    rows.push([{ coin, x: edge + reach(coin) }]);
  }
  return rows;
}

/**
 * @param {Row[]} rows
 * @param {number | null} line how much room is left below each; null lets each cover the one above
 * @param {number} edge how much room is left above the first, and below the last
 * @returns {Lying[] | null} the coins of each row standing on one line
 */
function stacked(rows, line, edge) {
  /** @type {Lying[]} */
  const lying = [];
  let base = edge;
  rows.forEach((row, index) => {
    const above = line === null && rows[index - 1];
    const rises = above
      ? row.flatMap(({ coin }) => above.map((other) =>
        covers(coin, other.coin) + reach(coin) - reach(other.coin)))
      : row.map(({ coin }) => 2 * reach(coin));
    base += Math.max(...rises);
    for (const { coin, x } of row) {
      lying.push({ coin: keyOf(coin), x, y: base - reach(coin) });
    }
    base += line ?? 0;
  });
  return base + (line ? 0 : edge) <= MAT ? lying : null;
}

/**
 * @param {Coin} coin
 * @param {Lying[]} others
 * @param {Currency} money
 * @param {boolean} clear
 * @returns {number[][]} where others lie, and how near it may come to each, squared
 */
function limitsOf(coin, others, money, clear) {
  return others.map(({ coin: key, x, y }) => {
    const other = coinOf(money, key);
    const gap = (hundredths(coin) + hundredths(other) + 20 * GAP) ** 2 / 400;
    const cover = least400(coin, other) ** 2 / 160000;
    return [x, y, Math.ceil(clear ? gap : cover)];
  });
}

/**
 * @param {number} x
 * @param {number} y
 * @param {number[][]} limits
 * @returns {boolean}
 */
function isFree(x, y, limits) {
  return limits.every(([ox, oy, least]) => (x - ox) ** 2 + (y - oy) ** 2 >= least);
}

/**
 * @param {number} ring
 * @returns {number[][]} the steps to the outline of a square around the middle
 */
function square(ring) {
  const steps = [];
  for (let i = -ring; i <= ring; i += 1) {
    steps.push([i, -ring], [i, ring], [-ring, i], [ring, i]);
  }
  return steps;
}

/**
 * @param {number[]} one
 * @param {number[]} other
 * @returns {boolean} whether one comes first, compared part by part
 */
function before(one, other) {
  const index = one.findIndex((part, at) => part !== other[at]);
  return index >= 0 && !(one[index] >= other[index]);
}

/**
 * @param {Coin} one
 * @param {Coin} other
 * @returns {number} the least distance in a row at which both can be read
 */
function covers(one, other) {
  return Math.ceil(least400(one, other) / 400);
}

/**
 * Of the coin below, the middle stays in sight, up to 0.55 of its radius.
 * @param {Coin} one
 * @param {Coin} other
 * @returns {number} 400 times the least distance
 */
function least400(one, other) {
  const [small, large] = [hundredths(one), hundredths(other)].sort((a, b) => a - b);
  return 20 * large + 11 * small;
}

/**
 * @param {Coin} coin
 * @returns {number} its diameter in hundredths of a millimetre
 */
function hundredths({ diameter }) {
  return Math.round(100 * diameter);
}

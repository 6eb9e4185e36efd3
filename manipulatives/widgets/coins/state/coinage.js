/**
 * Coins as they are, of data/coins.json; their sources are named in Python's maths. A teacher's own
 * currency arrives in the same form.
 *
 * @typedef {object} Coin
 * @property {number} worth in the smaller unit
 * @property {string} name
 * @property {number} diameter millimetres
 * @property {string} metal of its ring, if the middle is another
 * @property {string} centre the metal of its middle, or ""
 * @property {string} edge
 * @property {number} sides of its outline, 0 for none
 * @property {number | null} flats millimetres across two opposite sides
 * @property {number} notches
 * @property {string} many what several are called, or ""
 *
 * @typedef {{ sign: string, one: string, many: string }} Unit
 *
 * @typedef {object} Currency
 * @property {string} name
 * @property {Unit} minor
 * @property {Unit | null} major
 * @property {Coin[]} coins the largest worth first
 * @property {string[]} usual keys of the coins in a usual purse
 */

import COINS from "../../../data/coins.json" with { type: "json" };

const PLAIN = { centre: "", edge: "plain", sides: 0, flats: null, notches: 0, many: "" };

/**
 * The currency of a code, or a teacher's own as it is.
 * @param {string | Currency} given
 * @returns {Currency} the currency
 */
export function currencyOf(given) {
  if (typeof given !== "string") {
    return given;
  }
  const money = /** @type {Record<string, any>} */ (COINS)[given];
  const coins = money.coins.map((/** @type {object} */ coin) => ({ ...PLAIN, ...coin }));
  return { ...money, coins };
}

/**
 * What a coin is called in a tray, a purse and a fact.
 * @param {Coin} coin
 * @returns {string} its worth in digits
 */
export function keyOf({ worth }) {
  return String(worth);
}

/**
 * The coin of a key.
 * @param {Currency} money
 * @param {string} key
 * @returns {Coin} the coin
 */
export function coinOf(money, key) {
  return /** @type {Coin} */ (money.coins.find((coin) => keyOf(coin) === key));
}

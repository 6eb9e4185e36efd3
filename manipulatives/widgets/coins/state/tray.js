/**
 * Coins on a tray and in a purse, as Python's maths/money/tray.py knows them: what is true of them,
 * what is left, what can be traded.
 *
 * @typedef {import("./coinage.js").Currency} Currency
 * @typedef {import("./places.js").Lying} Lying
 * @typedef {string[] | Record<string, number>} Purse coins without end, or how many there are
 */
import { coinOf, keyOf } from "./coinage.js";
import { nextPlace, placeNear } from "./places.js";

const MOST_PIECES = 25;
const MOST_OFFERS = 4;

/**
 * What is true of the coins on a tray, as goals and mistakes ask for it.
 * @param {Lying[]} tray
 * @param {Currency} money
 * @param {Purse} purse
 * @returns {Facts} as Python's tray_facts
 */
export function facts(tray, money, purse) {
  const keys = byWorth(tray.map(({ coin }) => coin));
  const amount = sum(keys);
  const counts = Object.fromEntries(money.coins.map((coin) => [keyOf(coin), 0]));
  for (const key of keys) {
    counts[key] += 1;
  }
  const limits = { ...counts };
  for (const [key, left] of leftIn(purse, tray)) {
    limits[key] += left ?? Math.floor(amount / Number(key));
  }
  return {
    total: amount,
    count: keys.length,
    fewest: fewest(amount, Object.entries(limits))?.length === keys.length,
    kinds: keys.join(" "),
    ...Object.fromEntries(Object.entries(counts).map(([key, many]) => [`count_${key}`, many])),
  };
}

/**
 * How many of each coin are still in a purse, the largest first.
 * @param {Purse} purse
 * @param {Lying[]} tray
 * @returns {[key: string, left: number | null][]} null where there is no end
 */
export function leftIn(purse, tray) {
  if (Array.isArray(purse)) {
    return byWorth(purse).map((key) => [key, null]);
  }
  const there = (/** @type {string} */ key) => tray.filter(({ coin }) => coin === key).length;
  return byWorth(Object.keys(purse)).map((key) => [key, Math.max(0, purse[key] - there(key))]);
}

/**
 * The places of the coins in a tray in the order in which they are counted: the largest worth
 * first, then from the top, then from the left.
 * @param {Lying[]} tray
 * @returns {number[]} places, counted from 0
 */
export function counting(tray) {
  return tray.map((_, place) => place).sort((a, b) =>
    Number(tray[b].coin) - Number(tray[a].coin) || tray[a].y - tray[b].y || tray[a].x - tray[b].x);
}

/**
 * What coins can be traded for, the fewest coins first.
 * @param {string[]} given keys of the coins that are given away
 * @param {[key: string, left: number | null][]} left how many there are to be had
 * @returns {string[][]} at most four offers
 */
export function trades(given, left) {
  const amount = sum(given);
  if (given.length > 1) {
    return left.filter(([key, many]) => Number(key) === amount && many !== 0).map(([key]) => [key]);
  }
  /** @type {[string, number][]} */
  const limits = left.filter(([key]) => Number(key) < amount)
    .map(([key, many]) => [key, many ?? Math.floor(amount / Number(key))]);
  const offers = [fewest(amount, limits) ?? []];
  for (const [key, many] of limits) {
    const pieces = amount / Number(key);
    if (Number.isInteger(pieces) && pieces <= many) {
      offers.push(Array(pieces).fill(key));
    }
  }
  const unique = new Map(offers.map((offer) => [offer.join(" "), offer]));
  return [...unique.values()]
    .filter(({ length }) => length > 0 && length <= MOST_PIECES)
    .sort((a, b) => a.length - b.length)
    .slice(0, MOST_OFFERS);
}

/**
 * The tray after coins were traded.
 * @param {Lying[]} tray
 * @param {number[]} places which of them are given away
 * @param {string[]} offer what they become
 * @param {Currency} money
 * @returns {Lying[] | null} null when there is no room for the new coins
 */
export function traded(tray, places, offer, money) {
  const away = places.map((place) => tray[place]);
  const x = Math.floor(away.reduce((all, lying) => all + lying.x, 0) / away.length);
  const y = Math.floor(away.reduce((all, lying) => all + lying.y, 0) / away.length);
  const after = tray.filter((lying) => !away.includes(lying));
  for (const key of byWorth(offer)) {
    const lying = placeNear(key, x, y, after, money, true) ?? nextPlace(key, after, money);
    if (!lying) {
      return null;
    }
    after.push(lying);
  }
  return after;
}

/**
 * The fewest coins that make an amount; of several such ways the one with larger coins.
 * @param {number} amount
 * @param {[key: string, most: number][]} limits how many there are of each
 * @returns {string[] | null} the largest first, or null when none do
 */
export function fewest(amount, limits) {
  const coins = [...limits].sort(([a], [b]) => Number(b) - Number(a));
  // What the smallest coins do alone, then with the next larger one, and so on.
  const layers = [Array.from({ length: amount + 1 }, (_, made) => (made ? Infinity : 0))];
  for (const [key, most] of [...coins].reverse()) {
    layers.unshift(withCoin(layers[0], Number(key), most));
  }
  if (layers[0][amount] === Infinity) {
    return null;
  }
  /** @type {string[]} */
  const paid = [];
  let rest = amount;
  coins.forEach(([key, most], layer) => {
    const worth = Number(key);
    let many = Math.min(most, Math.floor(rest / worth));
    while (many + layers[layer + 1][rest - many * worth] > layers[layer][rest]) {
      many -= 1;
    }
    paid.push(...Array(many).fill(key));
    rest -= many * worth;
  });
  return paid;
}

/**
 * @param {number[]} without the fewest coins for each amount
 * @param {number} worth
 * @param {number} most
 * @returns {number[]} the same when there are also so many of one more coin
 */
function withCoin(without, worth, most) {
  const best = [...without];
  let left = Math.min(most, Math.floor((best.length - 1) / worth));
  // Bundles of 1, 2, 4, … of them, and what is left: together they make every number up to most.
  for (let bundle = 1; left > 0; bundle *= 2) {
    const many = Math.min(bundle, left);
    left -= many;
    for (let made = best.length - 1; made >= many * worth; made -= 1) {
      best[made] = Math.min(best[made], best[made - many * worth] + many);
    }
  }
  return best;
}

/**
 * What coins are worth together.
 * @param {string[]} keys
 * @returns {number} in the smaller unit
 */
export function sum(keys) {
  return keys.reduce((all, key) => all + Number(key), 0);
}

/**
 * @param {string[]} keys
 * @returns {string[]} the same, the largest worth first
 */
function byWorth(keys) {
  return [...keys].sort((a, b) => Number(b) - Number(a));
}

/**
 * Whether all coins of a tray are coins of the currency, as they are not while two traits that
 * belong together are being set one after the other.
 * @param {Lying[]} tray
 * @param {Currency} money
 * @returns {boolean}
 */
export function fits(tray, money) {
  return tray.every(({ coin }) => coinOf(money, coin));
}

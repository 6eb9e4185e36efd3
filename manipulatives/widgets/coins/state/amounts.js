/**
 * Amounts and coins in writing and in words, as Python's words/money.py gives them; the
 * words here have digits in them, since they are read by a voice.
 *
 * @typedef {import("./coinage.js").Coin} Coin
 * @typedef {import("./coinage.js").Currency} Currency
 * @typedef {{ worths: boolean, names: boolean }} Told what the coins say of themselves
 */
import { keyOf } from "./coinage.js";

const WORTH_OF_MAJOR = 100;

/**
 * An amount as it is written.
 * @param {number} amount in the smaller unit
 * @param {Currency} money
 * @param {string} [writing] "mixed", "small" or "decimal"
 * @returns {string} such as "$1 and 41¢"
 */
export function inWriting(amount, { minor, major }, writing = "mixed") {
  const small = amount + minor.sign;
  const large = Math.floor(amount / WORTH_OF_MAJOR);
  const rest = amount % WORTH_OF_MAJOR;
  if (!major || writing === "small") {
    return small;
  }
  if (writing === "decimal") {
    return `${major.sign}${large}.${String(rest).padStart(2, "0")}`;
  }
  return large ? major.sign + large + (rest ? ` and ${rest}${minor.sign}` : "") : small;
}

/**
 * What a coin's face says of its worth.
 * @param {Coin} coin
 * @param {Currency} money
 * @returns {string} such as "25" or "$1"
 */
export function signOn({ worth }, { major }) {
  return major && worth % WORTH_OF_MAJOR === 0
    ? major.sign + worth / WORTH_OF_MAJOR
    : String(worth);
}

/**
 * An amount as it is said.
 * @param {number} amount in the smaller unit
 * @param {Currency} money
 * @returns {string} such as "1 dollar and 41 cents"
 */
export function spoken(amount, { minor, major }) {
  const large = major ? Math.floor(amount / WORTH_OF_MAJOR) : 0;
  const rest = amount - large * WORTH_OF_MAJOR;
  const parts = [];
  if (major && large) {
    parts.push(`${large} ${large === 1 ? major.one : major.many}`);
  }
  if (rest || !large) {
    parts.push(`${rest} ${rest === 1 ? minor.one : minor.many}`);
  }
  return parts.join(" and ");
}

/**
 * What a coin is called. Where neither name nor worth is shown, its look is told and nothing else:
 * what is asked is never said.
 * @param {Coin} coin
 * @param {Currency} money
 * @param {Told} told
 * @returns {string} such as "quarter, 25 cents"
 */
export function coinInWords(coin, money, { worths, names }) {
  const worth = spoken(coin.worth, money);
  if (names) {
    return worths && worth !== coin.name ? `${coin.name}, ${worth}` : coin.name;
  }
  return worths ? worth : look(coin);
}

/**
 * Which coins there are.
 * @param {string[]} keys
 * @param {Currency} money
 * @param {Told} told
 * @returns {string} such as "2 quarters, 1 dime"
 */
export function coinsInWords(keys, money, { worths, names }) {
  const groups = money.coins.map((coin) => {
    const count = keys.filter((key) => key === keyOf(coin)).length;
    const many = coin.many || `${coin.name} coins`;
    const one = many.endsWith(" coins") ? many.slice(0, -1) : coin.name;
    const worth = spoken(coin.worth, money);
    const kind = worths ? `${count === 1 ? "coin" : "coins"} of ${worth}` : look(coin);
    return count && `${count} ${names ? (count === 1 ? one : many) : kind}`;
  });
  return groups.filter(Boolean).join(", ") || "no coins";
}

/**
 * @param {Coin} coin
 * @returns {string} what can be seen of it
 */
function look({ metal, centre, sides, diameter }) {
  const metals = centre ? `${metal} and ${centre}` : metal;
  const corners = sides ? `, ${sides} sides` : "";
  return `${metals} coin, ${Math.round(diameter)} millimetres${corners}`;
}

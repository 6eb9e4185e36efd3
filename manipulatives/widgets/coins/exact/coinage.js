/**
 * Coins as they are, as Python's maths/coins.py knows them and describes them in its data; there
 * their sources are named. A teacher's own currency arrives in the same form.
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

const PLAIN = { centre: "", edge: "plain", sides: 0, flats: null, notches: 0, many: "" };
const MILLED = { edge: "milled" };
const PARTLY = { edge: "interrupted" };
const SCALLOPED = { edge: "scalloped" };
const SEVEN = { sides: 7 };
const NOTCHED = { notches: 7 };
const COPPER = "copper";
const SILVER = "silver";
const GOLD = "gold";

/** @typedef {[worth: number, name: string, diameter: number, metal: string, more?: object]} Row */

/** @type {Row[]} */
const US = [
  [100, "dollar", 26.49, GOLD, { edge: "lettered", many: "dollar coins" }],
  [50, "half dollar", 30.61, SILVER, { ...MILLED, many: "half dollars" }],
  [25, "quarter", 24.26, SILVER, { ...MILLED, many: "quarters" }],
  [10, "dime", 17.91, SILVER, { ...MILLED, many: "dimes" }],
  [5, "nickel", 21.21, SILVER, { many: "nickels" }],
  [1, "penny", 19.05, COPPER, { many: "pennies" }],
];
/** @type {Row[]} */
const UK = [
  [200, "two pounds", 28.4, GOLD, { centre: SILVER, ...MILLED, many: "two pound coins" }],
  [100, "one pound", 23.43, GOLD, { centre: SILVER, ...PARTLY, sides: 12, flats: 23.03 }],
  [50, "fifty pence", 27.3, SILVER, SEVEN],
  [20, "twenty pence", 21.4, SILVER, SEVEN],
  [10, "ten pence", 24.5, SILVER, MILLED],
  [5, "five pence", 18, SILVER, MILLED],
  [2, "two pence", 25.9, COPPER],
  [1, "one penny", 20.3, COPPER],
];
/** @type {Row[]} */
const EURO = [
  [200, "two euros", 25.75, SILVER, { centre: GOLD, ...MILLED, many: "two euro coins" }],
  [100, "one euro", 23.25, GOLD, { centre: SILVER, ...PARTLY }],
  [50, "fifty cents", 24.25, GOLD, { ...SCALLOPED, many: "fifty cent coins" }],
  [20, "twenty cents", 22.25, GOLD, { ...NOTCHED, many: "twenty cent coins" }],
  [10, "ten cents", 19.75, GOLD, { ...SCALLOPED, many: "ten cent coins" }],
  [5, "five cents", 21.25, COPPER, { many: "five cent coins" }],
  [2, "two cents", 18.75, COPPER, { edge: "grooved", many: "two cent coins" }],
  [1, "one cent", 16.25, COPPER],
];
/** @type {Row[]} */
const CANADA = [
  [200, "toonie", 28, SILVER, { centre: GOLD, ...PARTLY, many: "toonies" }],
  [100, "loonie", 26.5, GOLD, { sides: 11, many: "loonies" }],
  [25, "quarter", 23.88, SILVER, { ...MILLED, many: "quarters" }],
  [10, "dime", 18.03, SILVER, { ...MILLED, many: "dimes" }],
  [5, "nickel", 21.2, SILVER, { many: "nickels" }],
];
/** @type {Row[]} */
const AUSTRALIA = [
  [200, "two dollars", 20.5, GOLD, { ...PARTLY, many: "two dollar coins" }],
  [100, "one dollar", 25, GOLD, PARTLY],
  [50, "fifty cents", 32.77, SILVER, { sides: 12, flats: 31.65, many: "fifty cent coins" }],
  [20, "twenty cents", 28.65, SILVER, { ...MILLED, many: "twenty cent coins" }],
  [10, "ten cents", 23.6, SILVER, { ...MILLED, many: "ten cent coins" }],
  [5, "five cents", 19.41, SILVER, { ...MILLED, many: "five cent coins" }],
];
/** @type {Row[]} */
const NEW_ZEALAND = [
  [200, "two dollars", 26.5, GOLD, { edge: "grooved", many: "two dollar coins" }],
  [100, "one dollar", 23, GOLD, PARTLY],
  [50, "fifty cents", 24.75, SILVER, { many: "fifty cent coins" }],
  [20, "twenty cents", 21.75, SILVER, { ...NOTCHED, many: "twenty cent coins" }],
  [10, "ten cents", 20.5, COPPER, { many: "ten cent coins" }],
];

const DOLLAR = { sign: "$", one: "dollar", many: "dollars" };
const CENT = { sign: "\u00a2", one: "cent", many: "cents" };
const PLAIN_CENT = { ...CENT, sign: "c" };
const PENNY = { sign: "p", one: "penny", many: "pence" };
const POUND = { sign: "\u00a3", one: "pound", many: "pounds" };
const EUROS = { sign: "\u20ac", one: "euro", many: "euros" };

/** @type {Record<string, [string, Unit, Unit, Row[], string?]>} */
const CURRENCIES = {
  usd: ["US dollars", CENT, DOLLAR, US, "25 10 5 1"],
  gbp: ["pounds", PENNY, POUND, UK],
  eur: ["euros", PLAIN_CENT, EUROS, EURO],
  cad: ["Canadian dollars", CENT, DOLLAR, CANADA],
  aud: ["Australian dollars", PLAIN_CENT, DOLLAR, AUSTRALIA],
  nzd: ["New Zealand dollars", PLAIN_CENT, DOLLAR, NEW_ZEALAND],
};

/**
 * The currency of a code, or a teacher's own as it is.
 * @param {string | Currency} given
 * @returns {Currency} the currency
 */
export function currencyOf(given) {
  if (typeof given !== "string") {
    return given;
  }
  const [name, minor, major, rows, usual] = CURRENCIES[given];
  const coins = rows.map(([worth, called, diameter, metal, more]) =>
    ({ ...PLAIN, worth, name: called, diameter, metal, ...more }));
  return { name, minor, major, coins, usual: usual?.split(" ") ?? coins.map(keyOf) };
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

/**
 * Mats with blocks on them, without anything drawn. Python's place_value.py, trades.py
 * and mats.py in maths/number/ know the same facts; both pass the same cases.
 *
 * @typedef {"thousands" | "hundreds" | "tens" | "ones"} Place
 * @typedef {Record<Place, number>} Blocks how many there are of each place
 * @typedef {Blocks[]} Mat one or two
 *
 * @typedef {object} Trade
 * @property {Place} place what is given away
 * @property {1 | -1} way 1 up, ten become one; -1 down, one becomes ten
 * @property {number} times how often at once
 */

/** @type {Place[]} the largest first, as they are written */
export const PLACES = ["thousands", "hundreds", "tens", "ones"];
export const WORTH = { thousands: 1000, hundreds: 100, tens: 10, ones: 1 };
export const LARGEST = 9999;

// What keys do to a column: blocks more or less, the way of a trade, and the mat a block goes to.
/** @type {Record<string, number>} */
const MORE = {
  "ArrowUp": 1, "+": 1, "Shift++": 1, "ArrowDown": -1, "-": -1, "Backspace": -1, "Delete": -1,
};
/** @type {Record<string, 1 | -1>} */
const TRADE = { "Shift+ArrowLeft": 1, "Shift+ArrowRight": -1 };
/** @type {Record<string, number>} */
const OTHER = { "Shift+ArrowUp": 0, "Shift+ArrowDown": 1 };

/**
 * Blocks with all four places named.
 * @param {Partial<Blocks>} [some] a place left out has none
 * @returns {Blocks}
 */
export function full(some = {}) {
  const { thousands = 0, hundreds = 0, tens = 0, ones = 0 } = some;
  return { thousands, hundreds, tens, ones };
}

/**
 * The number that blocks show.
 * @param {Blocks} blocks
 * @returns {number}
 */
export function numberOf(blocks) {
  return PLACES.reduce((sum, place) => sum + blocks[place] * WORTH[place], 0);
}

/**
 * How many blocks there are, whatever they are worth.
 * @param {Blocks} blocks
 * @returns {number}
 */
export function piecesOf(blocks) {
  return PLACES.reduce((sum, place) => sum + blocks[place], 0);
}

/**
 * What is true of a mat, as goals and mistakes ask for it.
 * @param {Mat} mat
 * @returns {Record<string, number | string | boolean>} as Python's mat_facts
 */
export function facts(mat) {
  const [first, second] = mat.map(factsOf);
  if (!second) {
    return first;
  }
  const others = Object.entries(second).map(([name, fact]) => [`second_${name}`, fact]);
  const [one, other] = mat.map((some) => numberOf(full(some)));
  const compare = compared(one, other);
  return { ...first, ...Object.fromEntries(others), compare, sum: one + other };
}

/**
 * @param {Partial<Blocks>} some
 * @returns {Record<string, number | boolean>}
 */
function factsOf(some) {
  const blocks = full(some);
  const canonical = PLACES.every((place) => blocks[place] < 10);
  return { number: numberOf(blocks), pieces: piecesOf(blocks), canonical, ...blocks };
}

/**
 * The sign that stands between two numbers.
 * @param {number} one
 * @param {number} other
 * @returns {"<" | "=" | ">"}
 */
export function compared(one, other) {
  if (one === other) {
    return "=";
  }
  return one < other ? "<" : ">";
}

/**
 * The place beside another one.
 * @param {Place} place
 * @param {number} step 1 to the next larger, -1 to the next smaller
 * @returns {Place | undefined}
 */
export function beside(place, step) {
  return PLACES[PLACES.indexOf(place) - step];
}

/**
 * The places that a mat has columns for: those asked for, and larger ones where blocks lie.
 * @param {Mat} mat
 * @param {number} places how many are asked for, the ones first
 * @returns {Place[]}
 */
export function columnsOf(mat, places) {
  const first = PLACES.findIndex((place) => mat.some((blocks) => blocks[place] > 0));
  const asked = PLACES.length - places;
  return PLACES.slice(first < 0 ? asked : Math.min(first, asked));
}

/**
 * A mat with some more blocks, or fewer.
 * @param {Mat} mat
 * @param {number} at which of them
 * @param {Partial<Blocks>} change how many more of each place
 * @returns {Mat | null} null when there are not as many, or a mat does not hold so much
 */
export function changed(mat, at, change) {
  const blocks = { ...mat[at] };
  for (const place of PLACES) {
    blocks[place] += change[place] ?? 0;
    if (blocks[place] < 0) {
      return null;
    }
  }
  return numberOf(blocks) > LARGEST ? null : mat.map((was, index) => (index === at ? blocks : was));
}

/**
 * A mat after a trade.
 * @param {Mat} mat
 * @param {number} at
 * @param {Place} place what is given away
 * @param {1 | -1} way
 * @param {number} [times]
 * @returns {Mat | null} null when it cannot be
 */
export function traded(mat, at, place, way, times = 1) {
  const other = beside(place, way);
  const [gave, got] = way > 0 ? [10, 1] : [1, 10];
  return other ? changed(mat, at, { [place]: -gave * times, [other]: got * times }) : null;
}

/**
 * The trade that led from one to the other.
 * @param {Blocks} before
 * @param {Blocks} after
 * @returns {Trade | null} null when it was anything else
 */
export function tradeBetween(before, after) {
  const touched = PLACES.filter((place) => before[place] !== after[place]);
  const [larger, smaller] = touched;
  if (touched.length !== 2 || beside(larger, -1) !== smaller) {
    return null;
  }
  const up = after[larger] - before[larger];
  if (after[smaller] - before[smaller] !== -10 * up) {
    return null;
  }
  return up > 0
    ? { place: smaller, way: 1, times: up }
    : { place: larger, way: -1, times: -up };
}

/**
 * All blocks of both mats on the first.
 * @param {Mat} mat
 * @returns {Mat | null} null when there are not two, the second is empty, or one does not hold both
 */
export function together(mat) {
  return mat.length > 1 && piecesOf(mat[1]) > 0
    ? changed([mat[0], full()], 0, mat[1])
    : null;
}

/**
 * @typedef {object} Taken blocks in the hand
 * @property {number | null} at the mat they come from; null, out of the box, which has no end
 * @property {Place} place
 * @property {number} count
 *
 * @typedef {{ at: number, place: Place } | null} Target where they are put; null, beside the mats
 *
 * @typedef {object} Put
 * @property {Mat} [mat] what there is then
 * @property {string} [why] or why it cannot be, in a sentence for a child
 */

/**
 * Put blocks down. In their own column they are put in; in the next smaller one they break into
 * ten each; in the next larger one ten of them become one; beside the mats they are taken away.
 * @param {Mat} mat
 * @param {Taken} taken
 * @param {Target} target
 * @param {boolean} trades whether blocks can be traded
 * @returns {Put}
 */
export function putDown(mat, { at, place, count }, target, trades) {
  const lifted = at === null ? mat : changed(mat, at, { [place]: -count });
  if (!lifted) {
    return { mat };
  }
  if (!target) {
    return { mat: lifted };
  }
  const into = landed({ at, place, count }, target, trades);
  if (typeof into === "string") {
    return { why: into };
  }
  const next = changed(lifted, target.at, into);
  return next ? { mat: next } : { why: `A mat holds ${LARGEST} at most.` };
}

/**
 * @param {Taken} taken
 * @param {NonNullable<Target>} target
 * @param {boolean} trades
 * @returns {Partial<Blocks> | string} what comes to lie there, or why nothing does
 */
function landed({ place, count }, target, trades) {
  const steps = PLACES.indexOf(target.place) - PLACES.indexOf(place);
  if (steps === 0) {
    return { [place]: count };
  }
  if (trades && steps === 1) {
    return { [target.place]: 10 * count };
  }
  if (trades && steps > 1) {
    const next = /** @type {Place} */ (beside(place, -1));
    return `First break the ${named(place, 1)} into ${next}.`;
  }
  if (!trades || steps < -1) {
    return `${named(place, 2, true)} belong in their own column.`;
  }
  return count % 10 === 0
    ? { [target.place]: count / 10 }
    : `Ten ${place} make a ${named(target.place, 1)}. You have ${count}.`;
}

/**
 * What one block, or several, of a place are called.
 * @param {Place} place
 * @param {number} count
 * @param {boolean} [first] whether it begins a sentence
 * @returns {string}
 */
export function named(place, count, first) {
  const name = count === 1 ? place.slice(0, -1) : place;
  return first ? name[0].toUpperCase() + name.slice(1) : name;
}

/**
 * The mat after a key was pressed on a column: blocks more or less, a trade, or a block that goes
 * to the other mat.
 * @param {Mat} mat
 * @param {number} at
 * @param {Place} place
 * @param {string} key such as "ArrowUp" or "Shift+ArrowLeft"
 * @param {{ trades: boolean, columns: Place[] }} rules
 * @returns {Mat | null | undefined} undefined when the key means nothing here, null when it cannot
 */
export function keyed(mat, at, place, key, { trades, columns }) {
  if (/^\d$/.test(key)) {
    return changed(mat, at, { [place]: Number(key) - mat[at][place] });
  }
  if (Object.hasOwn(MORE, key)) {
    return changed(mat, at, { [place]: MORE[key] });
  }
  if (Object.hasOwn(TRADE, key)) {
    const way = TRADE[key];
    return trades && (way < 0 || place !== columns[0]) ? traded(mat, at, place, way) : null;
  }
  if (Object.hasOwn(OTHER, key)) {
    const other = OTHER[key];
    return other !== at && other < mat.length
      ? putDown(mat, { at, place, count: 1 }, { at: other, place }, false).mat ?? null
      : null;
  }
  return undefined;
}

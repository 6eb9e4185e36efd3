/**
 * How blocks lie in their columns: in rows that can be counted, ones in fives and tens, tens in
 * fives, hundreds and thousands fanned out in fives. Lengths are in units, the side of a one,
 * unless they are said to be pixels. Python's drawings/block_rows.py lays blocks in the same way.
 *
 * @typedef {import("./places.js").Place} Place
 * @typedef {import("./places.js").Mat} Mat
 * @typedef {{ x: number, y: number }} Spot the top left corner of a block
 *
 * @typedef {object} Plan a way for the blocks of one column to lie
 * @property {number} strip what is seen at least of a block in a fan; 0 where none covers another
 * @property {(strip: number) => number} wide
 * @property {(strip: number) => number} high
 * @property {(wide: number, high: number) => number} open the strip in so much room
 * @property {(index: number, strip: number) => Spot} spot
 *
 * @typedef {object} Column which plan of so many blocks it is; how far its fan is open; how far
 *   from the left it begins, in pixels
 * @property {number} most
 * @property {number} plan
 * @property {number} strip
 * @property {number} left
 *
 * @typedef {object} Laid
 * @property {number} unit in pixels
 * @property {boolean} boxed whether most blocks of a full column are in boxes
 * @property {Partial<Record<Place, Column>>} columns
 *
 * @typedef {{ size: number, count: number }} Boxes how many blocks are in each, and how many boxes
 */
import ROWS from "../../../data/block_rows.json" with { type: "json" };
import BLOCKS from "../../../data/blocks.json" with { type: "json" };
import { piecesOf } from "./places.js";

/** @type {Record<Place, { wide: number, high: number }>} */
export const SIZES = BLOCKS.sizes;
const BOX = ROWS.box;
// Blocks of fewer pixels are put in boxes.
const LEAST_PX = 5;
// A unit is no more than this of a column's height: a ten would fit.
const SHARE = 1 / 12;

/**
 * The ways in which so many blocks of a place can lie. Of two that fit the first is better.
 * @param {Place} place
 * @param {number} most
 * @returns {Plan[]}
 */
export function plansFor(place, most) {
  switch (place) {
    case "ones":
      return onesPlans(most);
    case "tens":
      return tensPlans(most);
    default:
      return ROWS.fan.lengths.flatMap((length) => [
        fan(place, most, Math.min(length, most), false),
        fan(place, most, Math.min(length, most), true),
      ]);
  }
}

/**
 * Ones: two rows of five are ten, one ten below the other and then in further stacks.
 * @param {number} most
 * @returns {Plan[]}
 */
function onesPlans(most) {
  const { pitch, ones: { group, stack } } = ROWS;
  const tens = Math.ceil(most / 10);
  return Array.from({ length: tens }, (_, index) => {
    const deep = Math.ceil(tens / (index + 1));
    const wide = stack * index + 4 * pitch + 1;
    const high = group * (deep - 1) + pitch + 1;
    return closed(wide, high, (at) => {
      const ten = Math.floor(at / 10);
      return {
        x: stack * Math.floor(ten / deep) + pitch * (at % 5),
        y: group * (ten % deep) + pitch * Math.floor((at % 10) / 5),
      };
    });
  });
}

/**
 * Tens: fives beside each other, each two of them a little nearer, and further rows below.
 * @param {number} most
 * @returns {Plan[]}
 */
function tensPlans(most) {
  const { pitch, tens: { five, pair, row } } = ROWS;
  const fives = Math.ceil(most / 5);
  const left = (/** @type {number} */ at) => five * at + pair * Math.floor(at / 2);
  const pairs = Array.from({ length: Math.floor(fives / 2) }, (_, index) => 2 * index + 2);
  return [pairs[0], 1, ...pairs.slice(1)].map((across) => {
    const high = row * Math.ceil(fives / across) - 1;
    return closed(left(across - 1) + 4 * pitch + 1, high, (at) => {
      const of = Math.floor(at / 5);
      return { x: left(of % across) + pitch * (at % 5), y: row * Math.floor(of / across) };
    });
  });
}

/**
 * @param {number} wide
 * @param {number} high
 * @param {(index: number) => Spot} spot
 * @returns {Plan} where no block covers another
 */
function closed(wide, high, spot) {
  return { strip: 0, wide: () => wide, high: () => high, open: () => 0, spot };
}

/**
 * Hundreds and thousands: each covers a part of the one before, and after five there is a gap.
 * @param {"hundreds" | "thousands"} place
 * @param {number} most
 * @param {number} length how many are in each fan
 * @param {boolean} across whether a fan goes to the right, not down
 * @returns {Plan}
 */
function fan(place, most, length, across) {
  const size = SIZES[place].wide;
  const apart = size + ROWS.fan.clear;
  const along = (/** @type {number} */ at, /** @type {number} */ strip) =>
    strip * at + ROWS.fan.five * Math.floor(at / 5);
  const long = (/** @type {number} */ strip) => along(length - 1, strip) + size;
  const deep = () => apart * Math.ceil(most / length) - ROWS.fan.clear;
  const strip = ROWS.fan[place];
  return {
    strip,
    wide: across ? long : deep,
    high: across ? deep : long,
    open(wide, high) {
      const free = (across ? wide : high) - long(0);
      return length > 1 ? Math.min(apart, Math.max(strip, free / (length - 1))) : apart;
    },
    spot(index, seen) {
      const far = along(index % length, seen);
      const sideways = apart * Math.floor(index / length);
      return across ? { x: far, y: sideways } : { x: sideways, y: far };
    },
  };
}

/**
 * Lay the blocks of all mats, whose columns are of one size.
 * @param {Mat} mat
 * @param {Place[]} columns
 * @param {number} width of a column, in pixels
 * @param {number} height
 * @param {number} type the size of the type, in pixels
 * @returns {Laid}
 */
export function lay(mat, columns, width, height, type) {
  const pieces = mat.reduce((sum, blocks) => sum + piecesOf(blocks), 0);
  const apart = pieces > ROWS.most ? null : fit(mat, columns, width, height, type, false);
  return apart && apart.unit >= LEAST_PX
    ? apart
    : fit(mat, columns, width, height, type, true);
}

/**
 * @param {Mat} mat
 * @param {Place[]} columns
 * @param {number} width
 * @param {number} height
 * @param {number} type
 * @param {boolean} boxed
 * @returns {Laid}
 */
function fit(mat, columns, width, height, type, boxed) {
  const rooms = columns.map((place) => {
    const counts = mat.map((blocks) => blocks[place]);
    const loose = Math.max(...counts.map((count) => (boxed ? looseOf(count) : count)));
    const above = boxed
      ? Math.max(...counts.map((count) => boxesIn(count, width, height, type).high))
      : 0;
    const most = ROWS.room[place].find((room) => room >= loose) ?? loose;
    return { place, most, high: Math.max(height - above, type), plans: plansFor(place, most) };
  });
  const units = rooms.map(({ high, plans }) =>
    Math.max(...plans.map((plan) => unitOf(plan, width, high))));
  const unit = Math.min(height * SHARE, ...units);
  /** @type {Laid["columns"]} */
  const laid = {};
  for (const { place, most, high, plans } of rooms) {
    // A little smaller than computed, so that rounding does not choose another plan.
    const strips = plans.map((each) =>
      (unitOf(each, width, high) > unit * 0.9999 ? each.open(width / unit, high / unit) : -1));
    const strip = Math.max(...strips);
    const plan = strips.indexOf(strip);
    laid[place] = { most, plan, strip, left: (width - plans[plan].wide(strip) * unit) / 2 };
  }
  return { unit, boxed, columns: laid };
}

/**
 * @param {Plan} plan
 * @param {number} width in pixels
 * @param {number} height
 * @returns {number} the largest unit with which it fits, in pixels
 */
function unitOf(plan, width, height) {
  return Math.min(width / plan.wide(plan.strip), height / plan.high(plan.strip));
}

/**
 * How many blocks of a full column stay out of the boxes.
 * @param {number} count
 * @returns {number}
 */
export function looseOf(count) {
  return count <= 2 * ROWS.loose ? count : ROWS.loose + (count % ROWS.loose);
}

/**
 * The boxes of a full column, the largest first.
 * @param {number} count how many blocks there are
 * @returns {Boxes[]}
 */
export function boxesOf(count) {
  let rest = count - looseOf(count);
  return ROWS.sizes.map((size) => {
    const boxes = Math.floor(rest / size);
    rest -= boxes * size;
    return { size, count: boxes };
  }).filter((boxes) => boxes.count > 0);
}

/**
 * How the boxes of a full column stand.
 * @param {number} count how many blocks there are
 * @param {number} width of the column, in pixels
 * @param {number} height
 * @param {number} type
 * @returns {{ row: number, side: number, high: number }} how many stand in a row, and in pixels how
 *   large each is and how high they are with a line of type over each size
 */
export function boxesIn(count, width, height, type) {
  const boxes = boxesOf(count);
  const [five, ten] = BOX.rows.map((row) => {
    const side = Math.min(BOX.most * type, width / ((row - 1) * BOX.pitch + 1));
    const high = boxes.reduce((sum, each) =>
      sum + BOX.line * type + BOX.pitch * side * Math.ceil(each.count / row), BOX.foot * type);
    return { row, side, high };
  });
  return five.high > BOX.share * height ? ten : five;
}

/**
 * Where the boxes stand, in pixels from the corner of their column.
 * @param {number} count how many blocks there are
 * @param {number} width
 * @param {number} height
 * @param {number} type
 * @returns {{ size: number, line: number, spots: Spot[] }[]} for each size where the foot of its
 *   line of type is
 */
export function boxSpots(count, width, height, type) {
  const { row, side } = boxesIn(count, width, height, type);
  const step = BOX.pitch * side;
  const left = (width - (row - 1) * step - side) / 2;
  let top = 0;
  return boxesOf(count).map(({ size, count: boxes }) => {
    const line = top + type;
    top += BOX.line * type;
    const spots = Array.from({ length: boxes }, (_, at) =>
      ({ x: left + step * (at % row), y: top + step * Math.floor(at / row) }));
    top += step * Math.ceil(boxes / row);
    return { size, line, spots };
  });
}

/**
 * Where the blocks lie that are in no box.
 * @param {Laid} laid
 * @param {Place} place
 * @param {number} count how many blocks the column holds
 * @param {number} above how high the boxes over them are, in pixels
 * @returns {Spot[]} in pixels from the corner of the column
 */
export function spotsOf({ unit, boxed, columns }, place, count, above) {
  const column = columns[place];
  if (!column) {
    return [];
  }
  const { most, plan, strip, left } = column;
  const { spot } = plansFor(place, most)[plan];
  return Array.from({ length: boxed ? looseOf(count) : count }, (_, at) => {
    const { x, y } = spot(at, strip);
    return { x: left + x * unit, y: above + y * unit };
  });
}

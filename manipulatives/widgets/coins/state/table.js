/**
 * How mat and purse lie beside or below each other, in tenths of a millimetre: everything on the
 * drawing has one scale, so that coins in the purse are as large as coins on the mat.
 *
 * @typedef {import("./coinage.js").Coin} Coin
 * @typedef {{ x: number, y: number, width: number, height: number }} Box
 *
 * @typedef {object} Table
 * @property {Box} whole the drawing, with a margin for lines around
 * @property {Box} mat
 * @property {{ x: number, y: number }} origin where the corner of the mat is that places count from
 * @property {Box | null} purse
 * @property {Box[]} slots where each kind of the purse is
 * @property {boolean} beside whether the purse is beside the mat, not below it
 * @property {number} type the size of type that is at least as large as it must be
 * @property {number} scale pixels for each tenth of a millimetre
 */
import FACE from "../../../data/coin_face.json" with { type: "json" };
import { coinOf } from "./coinage.js";
import { LINE, MAT, reach } from "./places.js";

/** All of the mat. */
export const WHOLE = { x: 0, y: 0, width: MAT, height: MAT };
const MARGIN = 8;
// So much larger the drawing must become for the purse to change its side.
const STAY = 1.15;
const BETWEEN = 30;
const ROOM = 24;
// Around coins that only lie there to be looked at; figures have room below them.
const AROUND = LINE + 20;
const TYPE = 54;
const TYPE_PX = 18;
const MOST_TYPE = 110;

/**
 * Lay mat and purse out for a place on the screen, as large as it allows.
 * @param {Coin[]} kinds what the purse holds
 * @param {boolean} named whether there is a line for names below each kind
 * @param {{ width: number, height: number }} place pixels; 0 where that is not known yet
 * @param {Box} part of the mat that is shown
 * @param {boolean} [before] whether the purse was beside the mat, where it stays if it can
 * @returns {Table}
 */
export function tableFor(kinds, named, place, part, before) {
  const [wide, high] = [true, false].map((beside) => {
    let table = lay(kinds, named, beside, TYPE, part);
    // The smaller the drawing, the larger is type of so many pixels on it, which makes it smaller.
    for (let round = 0; round < 4; round += 1) {
      const { whole } = table;
      table.scale = Math.min(place.width / whole.width, place.height / whole.height);
      const type = table.scale ? Math.max(TYPE, TYPE_PX / table.scale) : TYPE;
      if (round < 3) {
        table = lay(kinds, named, beside, Math.min(MOST_TYPE, type), part);
      }
    }
    return table;
  });
  const favour = before === undefined ? 1.02 : before ? 1 / STAY : STAY;
  return wide.scale > favour * high.scale ? wide : high;
}

/**
 * The part of the mat that coins need which only lie there to be looked at, with room for figures
 * below them, so that nothing moves when these appear.
 * @param {import("./places.js").Lying[]} tray
 * @param {import("./coinage.js").Currency} money
 * @returns {Box}
 */
export function partOf(tray, money) {
  const sides = tray.map(({ coin, x, y }) => ({ x, y, r: reach(coinOf(money, coin)) + AROUND }));
  const x = Math.min(...sides.map((side) => side.x - side.r));
  const y = Math.min(...sides.map((side) => side.y - side.r));
  const width = Math.max(...sides.map((side) => side.x + side.r)) - x;
  const height = Math.max(...sides.map((side) => side.y + side.r)) - y;
  return tray.length ? { x, y, width, height } : WHOLE;
}

/**
 * @param {Coin[]} kinds
 * @param {boolean} named
 * @param {boolean} beside whether the purse is beside the mat, not below it
 * @param {number} type
 * @param {Box} part
 * @returns {Table}
 */
function lay(kinds, named, beside, type, part) {
  const many = Math.max(1, kinds.length);
  const words = named ? kinds.map(({ name }) => name.split(" ")) : [];
  const lines = Math.max(0, ...words.map(({ length }) => length));
  const longest = Math.max(0, ...words.flat().map(({ length }) => length * FACE.letter * type));
  const largest = Math.max(0, ...kinds.map((coin) => 2 * reach(coin)));
  const widest = Math.max(largest, longest) + 2 * ROOM;
  const tallest = largest + lines * 1.1 * type + 2 * ROOM;
  const most = Math.max(1, Math.floor(beside ? part.height / tallest : part.width / widest));
  const lanes = Math.ceil(many / most);
  const along = Math.ceil(many / lanes);
  const [across, rows] = beside ? [lanes, along] : [along, lanes];
  const size = beside
    ? { width: across * widest, height: part.height }
    : { width: part.width, height: rows * tallest };
  const shift = kinds.length ? size[beside ? "width" : "height"] + BETWEEN : 0;
  const [right, down] = beside ? [shift, 0] : [0, shift];
  const purse = { x: 0, y: beside ? 0 : part.height + BETWEEN, ...size };
  const cell = { width: size.width / across, height: size.height / rows };
  return {
    whole: {
      x: -MARGIN,
      y: -MARGIN,
      width: part.width + right + 2 * MARGIN,
      height: part.height + down + 2 * MARGIN,
    },
    mat: { x: right, y: 0, width: part.width, height: part.height },
    origin: { x: right - part.x, y: -part.y },
    purse: kinds.length ? purse : null,
    beside,
    slots: kinds.map((_, index) => ({
      x: purse.x + (index % across) * cell.width,
      y: purse.y + Math.floor(index / across) * cell.height,
      ...cell,
    })),
    type,
    scale: 0,
  };
}

/**
 * Whether a point is in a box.
 * @param {Box | null} box
 * @param {{ x: number, y: number }} point
 * @returns {boolean}
 */
export function inside(box, { x, y }) {
  return box !== null && x >= box.x && x <= box.x + box.width && y >= box.y &&
    y <= box.y + box.height;
}

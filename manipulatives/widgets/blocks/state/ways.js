/**
 * How blocks go from where they were to where they are, or to what they become: ten ones to the
 * places of a ten's ten parts. Nothing is drawn here.
 *
 * @typedef {import("./places.js").Mat} Mat
 * @typedef {import("./places.js").Place} Place
 * @typedef {import("./rows.js").Spot} Spot
 *
 * @typedef {Record<Place, Spot[]>[]} Spots where the blocks of each mat lie
 *
 * @typedef {object} How a step was made
 * @property {Held} [held] by hand
 * @property {Gone} [gone] which blocks of a column went, when it were not the last ones
 *
 * @typedef {{ at: number, place: Place, indices: number[] }} Gone
 *
 * @typedef {object} Held blocks that were put down by hand
 * @property {number | null} at the mat they came from
 * @property {Place} place
 * @property {Spot[]} spots where they were let go
 * @property {{ at: number, place: Place }} target
 *
 * @typedef {object} Way of blocks of one place
 * @property {Place} place
 * @property {Spot[]} from
 * @property {Spot[]} to
 * @property {{ at: number, place: Place, count: number }} fresh the blocks, last in their column,
 *   that they are or become
 * @property {{ at: number, place: Place, spots: Spot[] } | null} gone what was traded, and where
 */
import { piecesIn } from "./block.js";
import { beside, tradeBetween } from "./places.js";

/**
 * The ways that blocks went.
 * @param {Mat} before
 * @param {Mat} after
 * @param {Spots} was
 * @param {Spots} is
 * @param {number} unit
 * @param {How} how
 * @returns {Way[]}
 */
export function waysBetween(before, after, was, is, unit, { held, gone }) {
  if (before.length !== after.length) {
    return [];
  }
  const ways = after.flatMap((blocks, at) => {
    const trade = tradeBetween(before[at], blocks);
    if (trade) {
      return [tradeWay(trade, at)];
    }
    return held?.target.at === at ? [heldWay(held, at)] : [];
  });
  return ways.length || before.length < 2 ? ways : across();

  /**
   * @param {import("./places.js").Trade} trade
   * @param {number} at
   * @returns {Way}
   */
  function tradeWay({ place, way, times }, at) {
    const other = /** @type {Place} */ (beside(place, way));
    const own = gone?.at === at && gone.place === place
      ? gone.indices.map((index) => was[at][place][index])
      : was[at][place].slice(-(way > 0 ? 10 : 1) * times);
    const from = held && held.place === place ? held.spots : own;
    const count = way > 0 ? times : 10 * times;
    const to = is[at][other].slice(-count);
    return {
      place: way > 0 ? place : other,
      from: way > 0 ? from : within(place, from),
      to: way > 0 ? within(other, to) : to,
      fresh: { at, place: other, count },
      gone: { at, place, spots: own },
    };
  }

  /**
   * @param {Held} hand
   * @param {number} at
   * @returns {Way}
   */
  function heldWay({ place, spots, target }, at) {
    const into = target.place;
    const from = into === place ? spots : within(place, spots);
    const to = is[at][into].slice(-from.length);
    return { place: into, from, to, fresh: { at, place: into, count: to.length }, gone: null };
  }

  /** @returns {Way[]} from one mat to the other */
  function across() {
    const places = /** @type {Place[]} */ (Object.keys(after[0]));
    return places.flatMap((place) => {
      const more = after.map((blocks, at) => blocks[place] - before[at][place]);
      const at = more.findIndex((count) => count > 0);
      const count = more[at] ?? 0;
      if (!count || more[1 - at] !== -count) {
        return [];
      }
      const from = was[1 - at][place].slice(-count);
      const to = is[at][place].slice(-from.length);
      return [{ place, from, to, fresh: { at, place, count: to.length }, gone: null }];
    });
  }

  /**
   * @param {Place} place
   * @param {Spot[]} spots of blocks
   * @returns {Spot[]} of the smaller blocks that they are made of
   */
  function within(place, spots) {
    return spots.flatMap(({ x, y }) =>
      piecesIn(place).map((part) => ({ x: x + part.x * unit, y: y + part.y * unit })));
  }
}

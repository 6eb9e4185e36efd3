/** Rings that are drawn round blocks. */
import { put } from "../../shared/svg.js";
import { PLACES, beside, named } from "../state/places.js";
import { isRing, rings } from "../state/ring.js";
import { some } from "../state/tell.js";

/**
 * @typedef {import("../state/places.js").Place} Place
 * @typedef {import("../state/rows.js").Spot} Spot
 * @typedef {import("../mats.js").Mats} Mats
 */

// How large a ring is across at least, in units.
const LEAST_RING = 1.5;

/**
 * What follows from a ring.
 * @param {Mats} mats
 * @param {{
 *   pick: (picked: import("./pick.js").Picked) => void,
 *   hint: (sentence: string) => void,
 *   trade: (at: number, place: Place, indices: number[]) => void,
 * }} hands
 * @returns {(at: number, line: Spot[]) => void} a ring was drawn on a mat
 */
export function makeRinging(mats, { pick, hint, trade }) {
  return (at, line) => {
    if (!isRing(line, LEAST_RING * mats.unit)) {
      hint("Bring the ring back to where it began.");
      return;
    }
    const kinds = mats.columns
      .map((place) => ({
        place,
        indices: mats.middles(at, place).flatMap((point, index) =>
          (rings(line, point) ? [index] : [])),
      }))
      .filter(({ indices }) => indices.length > 0);
    const [{ place, indices } = { place: PLACES[3], indices: [] }] = kinds;
    const larger = beside(place, 1);
    if (kinds.length > 1) {
      hint("Ring one kind of block.");
    } else if (indices.length === 10 && larger && mats.columns.includes(larger)) {
      trade(at, place, indices);
    } else if (indices.length) {
      pick({ at, place, indices });
      const make = larger ? ` Ten make a ${named(larger, 1)}.` : "";
      hint(`You ringed ${some(indices.length, place)}.${make}`);
    }
  };
}

/**
 * Show a ring while it is drawn.
 * @param {Mats} mats
 * @param {number} at
 * @param {Spot[]} line none when it is over
 * @returns {void}
 */
export function drawRing(mats, at, line) {
  const points = line.map(({ x, y }) => `${x} ${y}`);
  put(mats.views[at].ring, { d: points.length ? `M${points.join("L")}` : null });
}

/**
 * @param {Spot[]} line
 * @returns {number} how far it goes from where it began
 */
export function spread(line) {
  return Math.max(...line.map(({ x, y }) => Math.hypot(x - line[0].x, y - line[0].y)));
}

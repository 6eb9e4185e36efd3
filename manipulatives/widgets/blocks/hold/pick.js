/**
 * What is picked, to be put down where the next tap goes: some blocks of one column, or an endless
 * one of the box.
 */
import { PLACES } from "../state/places.js";
import { some } from "../state/tell.js";

/**
 * @typedef {import("../state/places.js").Place} Place
 *
 * @typedef {object} Picked
 * @property {number | null} at the mat, null for the box
 * @property {Place} place
 * @property {number[]} indices of the blocks in their column
 */

/**
 * @param {import("../mats.js").Mats} mats
 * @param {HTMLElement} box
 * @param {Record<Place, HTMLElement>} sources
 * @param {(sentence: string) => void} hint
 * @returns {{
 *   readonly now: Picked | null, pick: (next: Picked | null) => void, say: () => void,
 * }} what is picked; pick it, or nothing any more; say what to do with it
 */
export function makePicks(mats, box, sources, hint) {
  /** @type {Picked | null} */
  let now = null;
  return {
    get now() {
      return now;
    },
    pick(next) {
      now = next?.indices.length ? next : null;
      // There it is put away.
      box.classList.toggle("is-target", now !== null && now.at !== null);
      for (const place of PLACES) {
        sources[place].classList.toggle("is-picked", now?.at === null && now.place === place);
        mats.views.forEach(({ columns }, at) => {
          const own = now?.at === at && now.place === place ? now.indices : [];
          columns[place].blocks.forEach((block, index) => {
            block.classList.toggle("is-picked", own.includes(index));
          });
        });
      }
    },
    say() {
      const many = now?.indices.length ?? 0;
      const they = many === 1 ? "it goes" : "they go";
      hint(now ? `${some(many, now.place)}. Now tap where ${they}.` : "");
    },
  };
}

/**
 * Trades as they are seen: blocks fly to what they become, unless the system asks for reduced
 * motion. In both cases what was traded leaves its outline, and what it has become is marked,
 * until something else is done.
 */
import { PLACES } from "./state/places.js";
import { waysBetween } from "./state/ways.js";

/**
 * @typedef {import("./state/places.js").Mat} Mat
 * @typedef {import("./state/ways.js").Spots} Spots
 * @typedef {import("./state/ways.js").Way} Way
 */

/**
 * @param {import("./mats.js").Mats} mats
 * @param {ReturnType<typeof import("./overlay.js").makeOverlay>} overlay
 * @returns {{
 *   spots: () => Spots,
 *   settle: () => void,
 *   show: (before: Mat, after: Mat, was: Spots, how: import("./state/ways.js").How) => void,
 * }} where all blocks are, on the layer above everything; end what is on its way and wipe away what
 *   it left; show how blocks went from one mat to another
 */
export function makeTrading(mats, overlay) {
  /**
   * @param {number} at
   * @returns {{ right: number, down: number }} how far the field of a mat is from the layer above
   */
  function offset(at) {
    const layer = overlay.root.getBoundingClientRect();
    const field = mats.views[at].drawing.getBoundingClientRect();
    return { right: field.left - layer.left, down: field.top - layer.top };
  }

  /** @returns {Spots} */
  function spots() {
    return mats.views.map(({ columns }, at) => {
      const { right, down } = offset(at);
      return /** @type {any} */ (Object.fromEntries(PLACES.map((place) => [
        place, columns[place].spots.map(({ x, y }) => ({ x: x + right, y: y + down })),
      ])));
    });
  }

  /** @param {Way} way */
  function blocksOf({ fresh: { at, place, count } }) {
    return mats.views[at].columns[place].blocks.slice(-count);
  }

  return {
    spots,
    settle() {
      overlay.stop();
      for (const { traces, columns } of mats.views) {
        traces.replaceChildren();
        for (const place of PLACES) {
          for (const block of columns[place].blocks) {
            block.classList.remove("is-coming", "is-new");
          }
        }
      }
    },
    show(before, after, was, how) {
      const ways = waysBetween(before, after, was, spots(), mats.unit, how);
      const coming = ways.flatMap(blocksOf);
      const made = ways.filter(({ gone }) => gone).flatMap(blocksOf);
      for (const { gone } of ways) {
        if (gone) {
          const { right, down } = offset(gone.at);
          mats.trace(gone.at, gone.place, gone.spots.filter(Boolean)
            .map(({ x, y }) => ({ x: x - right, y: y - down })));
        }
      }
      coming.forEach((block) => block.classList.add("is-coming"));
      const landed = () => {
        coming.forEach((block) => block.classList.remove("is-coming"));
        made.forEach((block) => block.classList.add("is-new"));
      };
      if (matchMedia("(prefers-reduced-motion: reduce)").matches) {
        landed();
      } else {
        overlay.fly(ways, mats.unit, landed);
      }
    },
  };
}

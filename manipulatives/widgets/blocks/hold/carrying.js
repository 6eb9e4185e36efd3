/** Blocks in the hand: they are above everything, and their column shows where they go. */
import { pointIn } from "../../shared/svg.js";
import { PLACES } from "../state/places.js";
import { SIZES } from "../state/rows.js";

/**
 * @typedef {import("./pick.js").Picked} Picked
 * @typedef {import("../state/rows.js").Spot} Spot
 *
 * @typedef {object} Carried
 * @property {Picked} taken
 * @property {Element[]} away what stays in the column, unseen
 * @property {SVGGElement} hand
 * @property {import("./hold.js").Target | null} target where they would go just now
 * @property {PointerEvent} first where they were taken
 * @property {(last: PointerEvent) => Spot[]} spotsAt where they are
 */

const RISE_PX = 24;

/**
 * @param {import("../mats.js").Mats} mats
 * @param {ReturnType<typeof import("../overlay.js").makeOverlay>} overlay
 */
export function makeCarrying(mats, overlay) {
  /** @type {Set<Carried>} */
  const all = new Set();

  /**
   * @param {Picked} taken
   * @returns {Spot[]} where they lie, on the layer above everything
   */
  function spotsOf({ at, place, indices }) {
    if (at === null) {
      return [];
    }
    const { drawing, columns } = mats.views[at];
    const { left, top } = overlay.root.getBoundingClientRect();
    const field = drawing.getBoundingClientRect();
    return indices.map((index) => columns[place].spots[index])
      .map(({ x, y }) => ({ x: x + field.left - left, y: y + field.top - top }));
  }

  /** Show where everything would go. */
  function aim() {
    const targets = [...all].map(({ target }) => target);
    mats.views.forEach(({ columns }, at) => {
      for (const place of PLACES) {
        const aimed = targets.some((target) => target?.at === at && target.place === place);
        columns[place].handle.classList.toggle("is-target", aimed);
      }
    });
  }

  return {
    spotsOf,

    /**
     * @param {Element} element
     * @returns {Spot} where a block would be that is taken out of it
     */
    middleOf(element) {
      const around = overlay.root.getBoundingClientRect();
      const { left, top, width, height } = element.getBoundingClientRect();
      return {
        x: left + width / 2 - around.left - mats.unit, y: top + height / 2 - around.top - mats.unit,
      };
    },

    /**
     * @param {Picked} taken
     * @param {PointerEvent} first
     * @returns {Carried}
     */
    lift(taken, first) {
      const { at, place, indices } = taken;
      let spots = spotsOf(taken);
      /** @type {Element[]} */
      let away = [];
      if (at === null) {
        const { x, y } = pointIn(overlay.root, first);
        const { wide, high } = SIZES[place];
        spots = [{ x: x - (wide / 2) * mats.unit, y: y - (high / 2) * mats.unit }];
      } else {
        const { blocks } = mats.views[at].columns[place];
        away = indices.map((index) => blocks[index]).filter(Boolean);
      }
      for (const block of away) {
        block.classList.add("is-away");
      }
      const spotsAt = (/** @type {PointerEvent} */ last) => {
        const { right, down } = moved(first, last);
        return spots.map(({ x, y }) => ({ x: x + right, y: y + down }));
      };
      const hand = overlay.hold(place, spots, mats.unit);
      const carried = { taken, away, hand, target: null, first, spotsAt };
      all.add(carried);
      return carried;
    },

    /**
     * @param {Carried} carried
     * @param {PointerEvent} last
     */
    carry(carried, last) {
      const { right, down } = moved(carried.first, last);
      carried.hand.style.transform = `translate(${right}px,${down}px)`;
      carried.target = mats.columnAt(last);
      aim();
    },

    /** @param {Carried} carried */
    letGo(carried) {
      for (const block of carried.away) {
        block.classList.remove("is-away");
      }
      overlay.letGo(carried.hand);
      all.delete(carried);
      aim();
    },
  };
}

/**
 * @param {PointerEvent} first
 * @param {PointerEvent} last
 * @returns {{ right: number, down: number }} how far blocks were carried; they are above a finger,
 *   so that they are seen
 */
function moved(first, last) {
  const rise = first.pointerType === "touch" ? RISE_PX : 0;
  return { right: last.clientX - first.clientX, down: last.clientY - first.clientY - rise };
}

/**
 * Taking hold of points: drag one, or tap it and then tap where it goes. The plus on a side is
 * dragged in the same way, and leaves a new point.
 */
import { onDrag } from "../../shared/drag.js";
import { pointIn } from "../../shared/svg.js";
import { inserted, moved } from "./moves.js";
import { nearest, place } from "../exact/paper.js";

/**
 * @typedef {import("../exact/paper.js").Grid} Grid
 * @typedef {import("../exact/paper.js").Shape} Shape
 * @typedef {import("../exact/paper.js").Spot} Spot
 * @typedef {{ index: number, added: boolean, spot: Spot }} Taken a point by its number, whether it
 *   is only put when it is moved, and where it is
 *
 * @typedef {object} Hands
 * @property {import("../drawing/drawing.js").Sheet} sheet
 * @property {() => Grid} grid
 * @property {() => Shape} shape
 * @property {(taken: Taken) => void} taken a point was taken hold of
 * @property {(next: Shape) => void} slide go to another shape while a point is held
 * @property {(was: Shape, taken: Taken) => void} settle the drag that began here is over
 * @property {(taken: Taken) => void} tap
 */

// A pointer that stays nearer than this has tapped.
const TAP_PX = 6;
// So near to a point it is taken, however small its sign is.
const FINGER_PX = 24;

/**
 * Let points be taken.
 * @param {Hands} hands
 * @param {{ signal: AbortSignal }} life
 * @returns {{ isHeld: () => boolean, drop: () => Shape | null }} whether a point is held; let go of
 *   it, and say what the shape was before
 */
export function holdPoints(hands, { signal }) {
  const { sheet, grid, shape } = hands;
  /**
   * @type {{ taken: Taken, from: Shape, start: Spot, first: PointerEvent, lifted: boolean,
   *   base: Shape } | null}
   */
  let held = null;

  /**
   * @param {PointerEvent} event
   * @returns {Taken | null} what is there
   */
  function takenAt(event) {
    const { x, y } = pointIn(sheet.drawing, event);
    const near = shape().points.map((point, index) => {
      const spot = place(point, grid());
      return { index, added: false, spot, far: Math.hypot(spot.x - x, spot.y - y) * sheet.unit() };
    }).sort((a, b) => a.far - b.far)[0];
    const plus = event.target instanceof Element && event.target.closest(".polygon-plus");
    if (plus instanceof HTMLElement && !(near && near.far <= FINGER_PX / 2)) {
      return { index: Number(plus.dataset.side) + 1, added: true, spot: { x, y } };
    }
    return near && near.far <= Math.max(FINGER_PX, 35 * sheet.unit()) ? near : null;
  }

  onDrag(sheet.handles, {
    start(event) {
      const taken = held ? null : takenAt(event);
      if (taken) {
        const start = pointIn(sheet.drawing, event);
        const from = shape();
        held = { taken, from, start, first: event, lifted: false, base: from };
        hands.taken(taken);
      }
      return taken !== null;
    },
    move(event) {
      if (!held) {
        return;
      }
      const { taken, from, start, first } = held;
      const away = Math.hypot(event.clientX - first.clientX, event.clientY - first.clientY);
      if (!held.lifted && away < TAP_PX) {
        return;
      }
      const { x, y } = pointIn(sheet.drawing, event);
      const spot = { x: taken.spot.x + x - start.x, y: taken.spot.y + y - start.y };
      const point = nearest(spot, grid());
      if (!held.lifted && taken.added) {
        const more = inserted(from, taken.index - 1, point);
        held.base = typeof more === "string" ? from : more;
      }
      held.lifted = true;
      if (held.base.points.length > taken.index || !taken.added) {
        hands.slide(moved(held.base, taken.index, point, grid()));
      }
    },
    end() {
      const hold = held;
      held = null;
      if (hold?.lifted) {
        hands.settle(hold.from, hold.taken);
      } else if (hold) {
        hands.tap(hold.taken);
      }
    },
  }, { signal });

  return {
    isHeld: () => held !== null,
    drop() {
      const was = held?.from ?? null;
      held = null;
      return was;
    },
  };
}

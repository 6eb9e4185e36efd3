/**
 * Taking hold of points: drag one, or tap it and then tap where it goes. The plus on a side is
 * dragged in the same way, and leaves a new point. Each finger holds a point of its own.
 */
import { makeGrab } from "../shared/grab.js";
import { pointIn } from "../shared/svg.js";
import { inserted, moved } from "./state/moves.js";
import { nearest, place } from "./state/paper.js";

/**
 * @typedef {import("./state/paper.js").Grid} Grid
 * @typedef {import("./state/paper.js").Shape} Shape
 * @typedef {import("./state/paper.js").Spot} Spot
 * @typedef {{ index: number, added: boolean, spot: Spot }} Taken a point by its number, whether it
 *   is only put when it is moved, and where it is
 * @typedef {Taken & { start: Spot, base: Shape, put: boolean }} Held with where its pointer took
 *   it, the shape in which it is moved, and whether it has been moved
 *
 * @typedef {object} Hands
 * @property {import("./drawing.js").Sheet} sheet
 * @property {() => Grid} grid
 * @property {() => Shape} shape
 * @property {(taken: Taken) => void} taken a point was taken hold of
 * @property {(next: Shape) => void} slide go to another shape while a point is held
 * @property {(was: Shape, taken: Taken) => void} settle the step that began here is over
 * @property {(taken: Taken) => void} tap
 */

// So near to a point it is taken, however small its sign is.
const FINGER_PX = 24;

/**
 * Let points be taken.
 * @param {Hands} hands
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ isHeld: () => boolean, drop: () => Shape | null }} whether a point is held; let go of
 *   all, and say what the shape was before
 */
export function holdPoints(hands, lifetime) {
  const { sheet, grid, shape } = hands;
  // The shape when the first of all that is held was taken: what follows is one step.
  let began = shape();

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

  /** @type {import("../shared/grab.js").Grab<Held>} */
  const grab = makeGrab({
    move({ thing, last, carried }) {
      if (!carried) {
        return;
      }
      const { index, spot, start } = thing;
      const { x, y } = pointIn(sheet.drawing, last);
      const point = nearest({ x: spot.x + x - start.x, y: spot.y + y - start.y }, grid());
      if (!thing.put && thing.added) {
        const more = inserted(thing.base, index - 1, point);
        thing.base = typeof more === "string" ? thing.base : more;
      }
      thing.put = true;
      if (thing.base.points.length > index || !thing.added) {
        hands.slide(moved(thing.base, index, point, grid()));
        for (const { thing: other } of grab.holds()) {
          if (other !== thing) {
            other.base = moved(other.base, index, point, grid());
          }
        }
      }
    },
    end({ thing, carried }) {
      if (!carried) {
        hands.tap(thing);
      } else if (!isHeld()) {
        hands.settle(began, thing);
      }
    },
  }, lifetime);

  /**
   * A circle is held in one place, and nothing is put between points that others hold.
   * @param {Taken} taken
   * @returns {boolean} whether it can be held beside what is held
   */
  function isFree({ index, added }) {
    const others = grab.holds().map(({ thing }) => thing);
    return others.length === 0 || !(added || shape().curve ||
      others.some((other) => other.index === index || (other.added && !other.put)));
  }

  grab.on(sheet.handles, (event) => {
    const taken = takenAt(event);
    if (!taken || !isFree(taken)) {
      return null;
    }
    began = isHeld() ? began : shape();
    hands.taken(taken);
    return { ...taken, start: pointIn(sheet.drawing, event), base: shape(), put: false };
  });

  function isHeld() {
    return grab.holds().length > 0;
  }

  return {
    isHeld,
    drop() {
      const was = isHeld() ? began : null;
      grab.drop();
      return was;
    },
  };
}

/**
 * Taking hold of things with fingers, mouse and pen. Each pointer holds one thing, so that two
 * fingers can hold two. An element captures the pointer until it is let go, so that a finger that
 * slips off it, or off the window, still moves what it holds. `touch-action: none` belongs in the
 * CSS of what is taken and of nothing else, so that a page can be scrolled everywhere but there.
 */

/**
 * @template Thing
 * @typedef {object} Hold
 * @property {Thing} thing
 * @property {PointerEvent} first where and when it was taken
 * @property {PointerEvent} last where the pointer is
 * @property {boolean} carried whether the pointer went farther than one that taps
 */

/**
 * @template Thing
 * @typedef {object} Uses what is done with what is held
 * @property {(hold: Hold<Thing>) => void} move the pointer went elsewhere
 * @property {(hold: Hold<Thing>, event: PointerEvent) => void} end it was let go
 * @property {(hold: Hold<Thing>, event: PointerEvent) => void} [cancel] the system took the
 *   pointer, to scroll or for a call; where nothing else is said, that is the end as well
 */

/**
 * @template Thing
 * @typedef {(event: PointerEvent) => Thing | null} Take what is at a pointer, or null
 */

/**
 * @template Thing
 * @typedef {object} Grab
 * @property {(element: GlobalEventHandlers & Element,
 *   take: (event: PointerEvent) => Thing | null) => void} on let pointers take something of an
 *   element: what is at the pointer, or null
 * @property {() => Hold<Thing>[]} holds all that is held
 * @property {() => void} drop let go of everything; nothing is done with it
 */

// A pointer that stays nearer than this has tapped.
const TAP_PX = 6;
// The capture is lost after pointerup, and after pointercancel.
const EVENTS = ["pointerdown", "pointermove", "pointercancel", "lostpointercapture"];

/**
 * @template Thing
 * @param {Uses<Thing>} uses
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {Grab<Thing>}
 */
export function makeGrab({ move, end, cancel = end }, { signal }) {
  /** @type {Map<number, Hold<Thing>>} */
  const holds = new Map();
  return {
    on(element, take) {
      const hear = (/** @type {any} */ event) => {
        const { type, pointerId, clientX, clientY } = event;
        const hold = holds.get(pointerId);
        if (type === "pointerdown") {
          const thing = hold || event.button ? null : take(event);
          if (thing !== null) {
            // Neither text is selected nor an image dragged in place of the thing.
            event.preventDefault();
            holds.set(pointerId, { thing, first: event, last: event, carried: false });
            element.setPointerCapture(pointerId);
          }
        } else if (hold && type === "pointermove") {
          const { first } = hold;
          hold.last = event;
          hold.carried ||= Math.hypot(clientX - first.clientX, clientY - first.clientY) >= TAP_PX;
          move(hold);
        } else if (hold) {
          holds.delete(pointerId);
          (type === "pointercancel" ? cancel : end)(hold, event);
        }
      };
      for (const name of EVENTS) {
        element.addEventListener(name, hear, { signal });
      }
    },
    holds: () => [...holds.values()],
    drop: () => holds.clear(),
  };
}

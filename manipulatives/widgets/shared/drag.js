/**
 * One way to take hold of things, for finger, mouse and pen. The element keeps the pointer until
 * it is let go, so that a finger that slips off it, or off the window, still moves what it holds.
 * `touch-action: none` belongs in the CSS of what is dragged and of nothing else, so that a page
 * can be scrolled everywhere but there.
 *
 * @typedef {object} Drag
 * @property {(event: PointerEvent) => boolean} start whether there is something to take here
 * @property {(event: PointerEvent) => void} move it is held, and the pointer went elsewhere
 * @property {(event: PointerEvent) => void} end it was let go, or the system took the pointer
 */

/**
 * Tell of each drag that begins on an element. A second finger does not disturb the first.
 * @param {GlobalEventHandlers & Element} element what is taken, or holds what is taken
 * @param {Drag} drag
 * @param {{ signal: AbortSignal }} life
 * @returns {void}
 */
export function onDrag(element, { start, move, end }, { signal }) {
  /** @type {number | null} */
  let holder = null;

  element.addEventListener("pointerdown", (event) => {
    if (holder === null && event.button === 0 && start(event)) {
      // Neither text is selected nor an image dragged in place of the thing.
      event.preventDefault();
      holder = event.pointerId;
      element.setPointerCapture(holder);
    }
  }, { signal });

  element.addEventListener("pointermove", (event) => {
    if (event.pointerId === holder) {
      move(event);
    }
  }, { signal });

  // Follows pointerup and pointercancel alike.
  element.addEventListener("lostpointercapture", (event) => {
    if (event.pointerId === holder) {
      holder = null;
      end(event);
    }
  }, { signal });
}

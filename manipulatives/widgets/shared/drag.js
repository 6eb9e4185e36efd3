/** Dragging with one pointer: while it holds something, no other takes anything. */
import { makeGrab } from "./grab.js";

/**
 * @typedef {object} Drag
 * @property {(event: PointerEvent) => boolean} start whether there is something to take here
 * @property {(event: PointerEvent) => void} move it is held, and the pointer went elsewhere
 * @property {(event: PointerEvent) => void} end it was let go, or the system took the pointer
 */

/**
 * Tell of each drag that begins on an element.
 * @param {GlobalEventHandlers & Element} element what is taken, or holds what is taken
 * @param {Drag} drag
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {void}
 */
export function onDrag(element, { start, move, end }, lifetime) {
  const grab = makeGrab({
    move: ({ last }) => move(last),
    end: (_, event) => end(event),
  }, lifetime);
  grab.on(element, (event) => (grab.holds().length === 0 && start(event)) || null);
}

/** What only a teacher does with a timer: pausing it by hand, and adding time. */
import { left, rest, run } from "../../core/state/timer.js";

/** @typedef {import("../../core/state/timer.js").Timer} Timer */

/** How much one press adds, in seconds. */
export const STRETCH = 15;

/**
 * Pause it by hand: then only a hand starts it again.
 * @param {Timer} timer
 * @param {number} now
 * @returns {Timer}
 */
export function pause(timer, now) {
  return { ...rest(timer, now), held: true };
}

/**
 * Add 15 seconds. When time had run out, it runs on at once.
 * @param {Timer} timer
 * @param {number} now
 * @returns {Timer}
 */
export function stretch(timer, now) {
  const out = left(timer, now) === 0;
  const longer = { ...timer, allowed: timer.allowed + STRETCH };
  // What passed between running out and the press is not taken from what is given.
  return out ? run({ ...longer, used: timer.allowed * 1000, since: null }, now) : longer;
}

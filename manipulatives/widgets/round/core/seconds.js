/** A call for every second that a timer runs. */

// Just after the digits change.
const DELAY_MS = 20;

/**
 * @param {import("./state/round_timer.js").RoundTimer} timer
 * @param {() => void} second is called each second
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {() => void} call it when the timer may have been started or stopped
 */
export function makeSeconds(timer, second, { signal }) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let waiting;

  function wait() {
    clearTimeout(waiting);
    if (timer.running && !signal.aborted) {
      waiting = setTimeout(() => {
        second();
        wait();
      }, (timer.left % 1000) + DELAY_MS);
    }
  }
  signal.addEventListener("abort", () => clearTimeout(waiting), { once: true });
  return wait;
}

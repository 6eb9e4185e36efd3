/** The beat that a class counts to. A late beat does not make the next one late. */

/**
 * A beat that stands still.
 * @param {() => boolean} strike on each beat; false ends it
 * @param {() => void} ended the last strike ended it
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   start: (perMinute: number) => void, stop: () => void, toggle: (perMinute: number) => void,
 *   isRunning: () => boolean,
 * }} the first strike comes at once
 */
export function makeBeat(strike, ended, { signal }) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let waiting;
  let running = false;

  function stop() {
    clearTimeout(waiting);
    running = false;
  }

  /**
   * @param {number} due when, in milliseconds of the page
   * @param {number} apart
   */
  function wait(due, apart) {
    waiting = setTimeout(() => {
      if (!strike()) {
        stop();
        ended();
      } else if (running) {
        // What a sleeping page missed is not made up for, and no two beats fall together.
        const now = performance.now();
        wait(due + apart > now ? due + apart : now + apart, apart);
      }
    }, due - performance.now());
  }

  /** @param {number} perMinute */
  function start(perMinute) {
    stop();
    running = true;
    wait(performance.now(), 60_000 / perMinute);
  }

  signal.addEventListener("abort", stop);
  return {
    start,
    stop,
    toggle: (perMinute) => (running ? stop() : start(perMinute)),
    isRunning: () => running,
  };
}

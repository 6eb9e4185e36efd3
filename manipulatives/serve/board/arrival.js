/** When everything that Voila puts into a board is in its place. */
import { LOAD_TIMEOUT_MS } from "./load_timeout.js";

/** Whether Voila has rendered into an element: every child of it has content.
 * @param {Element} place
 * @returns {boolean}
 */
function done(place) {
  return place.firstElementChild?.localName !== "script" &&
    [...place.children].every((child) => child.childElementCount > 0);
}

/**
 * @param {HTMLElement} main
 * @param {AbortSignal} signal
 * @returns {Promise<boolean>} whether it is; false after the timeout or an abort
 */
export function whenShown(main, signal) {
  const all = () => [...main.querySelectorAll(".kit-view")].every(done);
  return new Promise((resolve) => {
    const watcher = new MutationObserver(look);
    const late = setTimeout(end, LOAD_TIMEOUT_MS);
    signal.addEventListener("abort", end, { once: true });

    function look() {
      if (all()) {
        end();
      }
    }

    function end() {
      clearTimeout(late);
      watcher.disconnect();
      resolve(all());
    }

    watcher.observe(main, { childList: true, subtree: true });
    look();
  });
}

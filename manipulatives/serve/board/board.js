/** A served board: a page that teaches, and a watch over the kernel behind it. */
import { startSession } from "../../outputs/page/session/session.js";
import { whenShown } from "./arrival.js";
import { extendLoadTimeout } from "./load_timeout.js";
import { makeNotice } from "./notice.js";
import { watchKernel } from "./watch.js";

/** After how many milliseconds an answer of the shelf counts as late. */
const ANSWER_TIMEOUT_MS = 1500;

/** The notice for each state of the kernel; "" removes the notice.
 * @type {Readonly<Record<import("./watch.js").State, string>>}
 */
const SENTENCES = Object.freeze({
  alive: "",
  ended: "Python has stopped. The board goes on working; " +
    "only what the notebook's own code works out stands still.",
  silent: "The shelf is closed. The board goes on working, " +
    "but cannot be loaded again until the shelf is open.",
});

const INCOMPLETE = "Some of the board did not load: this computer may be busy.";

/** @param {Document} page */
function open(page) {
  const { signal } = new AbortController();
  const main = /** @type {HTMLElement} */ (page.querySelector("main"));
  const say = makeNotice(/** @type {HTMLElement} */ (page.querySelector(".kit-say")), { signal });
  const { kitLesson: key = "" } = page.documentElement.dataset;

  const restoreTimeout = extendLoadTimeout();
  page.querySelector(".kit-wait")?.remove();
  startSession({ main, key, kind: "board", signal });
  whenShown(main, signal).then((complete) => {
    restoreTimeout();
    main.removeAttribute("aria-busy");
    if (!complete) {
      say(INCOMPLETE, true);
    }
  });
  if (main.hasAttribute("aria-busy")) {
    // The top bar replaces the title, so move the link back to the shelf into it.
    page.querySelector(".session-bar")?.prepend(...page.querySelectorAll(".kit-home"));
  }

  /** @param {string} id */
  const read = (id) => JSON.parse(page.getElementById(id)?.textContent || "null");
  say(read("kit-cell-errors") ?? "");
  const { baseUrl, kernelId } = read("jupyter-config-data");
  const address = `${baseUrl}kernel/${kernelId}`;

  /** @returns {Promise<import("./watch.js").Answer>} */
  async function ask() {
    try {
      // eslint-disable-next-line no-restricted-globals -- asks this machine's own server
      const answer = await fetch(address, { signal: AbortSignal.timeout(ANSWER_TIMEOUT_MS) });
      return (await answer.json()).alive === true;
    } catch (error) {
      return /** @type {Error} */ (error).name === "TimeoutError" ? "late" : "refused";
    }
  }

  watchKernel(ask, (state) => say(SENTENCES[state], state === "ended"), signal);
}

export default open(document);

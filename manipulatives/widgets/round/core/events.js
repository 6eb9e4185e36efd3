/**
 * What a round tells the page around it, by events that bubble from its root. "kit:round" says
 * which questions it holds.
 */

const RETRY_DELAY_MS = 100;

/**
 * @param {HTMLElement} root
 * @param {WidgetModel} model
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   tell: (event: string, detail?: object) => void,
 *   round: (afterwards?: (() => void) | null) => void,
 * }} round() tells "kit:round", and afterwards calls a function, once the round is on the page
 */
export function makeEvents(root, model, { signal }) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let waiting;

  /**
   * @param {string} event
   * @param {object} [detail]
   */
  function tell(event, detail) {
    root.dispatchEvent(new CustomEvent(event, { bubbles: true, detail }));
  }

  /**
   * A host may put a widget on the page some time after it was made; before that no listener
   * would be called.
   * @param {(() => void) | null} [afterwards]
   */
  function round(afterwards = null) {
    clearTimeout(waiting);
    if (root.isConnected) {
      const { title, skill, options, seed, seconds } = model.get("setup");
      tell("kit:round", { title, skill, options, seed, seconds, tasks: model.get("tasks") });
      afterwards?.();
    } else if (!signal.aborted) {
      waiting = setTimeout(round, RETRY_DELAY_MS, afterwards);
    }
  }
  signal.addEventListener("abort", () => clearTimeout(waiting), { once: true });

  return { tell, round };
}

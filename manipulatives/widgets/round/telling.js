/**
 * What a round tells the page around it, by events that rise from its root: where it stands
 * ("kit:place"), which questions it holds ("kit:round"), and each number of the count-aloud
 * ("kit:wipe").
 */

const AGAIN_MS = 100;

/**
 * @param {HTMLElement} root
 * @param {WidgetModel} model
 * @param {{ signal: AbortSignal }} life
 * @returns {{
 *   place: (desk: import("./desk.js").Desk) => void, round: (waited?: (() => void) | null) => void,
 *   wipe: (desk: import("./desk.js").Desk) => void, leave: (event: string) => void,
 * }}
 */
export function makeTelling(root, model, { signal }) {
  /** @type {ReturnType<typeof setTimeout> | undefined} */
  let later;

  /**
   * @param {string} event
   * @param {object} [detail]
   */
  function tell(event, detail) {
    root.dispatchEvent(new CustomEvent(event, { bubbles: true, detail }));
  }

  /**
   * A host may show a widget some time after it was made; before that nobody would hear.
   * @param {(() => void) | null} [waited] what to tell as well when nobody could hear it before
   */
  function round(waited = null) {
    clearTimeout(later);
    if (root.isConnected) {
      const { title, skill, seed, seconds } = model.get("setup");
      tell("kit:round", { title, skill, seed, seconds, tasks: model.get("tasks") });
      waited?.();
    } else if (!signal.aborted) {
      later = setTimeout(round, AGAIN_MS, waited);
    }
  }
  signal.addEventListener("abort", () => clearTimeout(later), { once: true });

  return {
    round,
    place({ place, tasks, steps, group, aside, task }) {
      const { task: number, phase, step } = place;
      tell("kit:place", {
        task: number, phase, step, steps, tasks: tasks.length, group, aside: aside ? task : null,
      });
    },
    wipe({ place, counts }) {
      tell("kit:wipe", { done: place.step, of: counts.length });
    },
    leave(event) {
      tell(event);
    },
  };
}

/**
 * Asking Python for a question with numbers of the teacher's own. A page that was made to be
 * opened without Python says so at once; a Python that does not answer is not waited for long.
 *
 * @typedef {import("./flow.js").Task} Task
 * @typedef {{ task: Task } | { problem: string }} Found the question, or a sentence why there is
 *   none
 */
import { isQuestion } from "./aside.js";

/** What a page says that has no Python behind it. */
export const NOBODY = "Own numbers need Python. This page has none.";
/** What is said when there is no answer. */
export const SILENT = "Python does not answer. Ready questions still work.";
const NOTHING = "Python found no question for that.";
const PATIENCE_MS = 5000;

/**
 * @param {WidgetModel} model of the round
 * @param {{ signal: AbortSignal }} life
 * @returns {(text: string) => Promise<Found>}
 */
export function makeAsking(model, { signal }) {
  /** @type {Map<number, (found: Found) => void>} */
  const waiting = new Map();
  let count = 0;

  /** @param {any} message */
  function hear(message) {
    if (message?.kind === "found") {
      const { task, problem } = message;
      waiting.get(message.id)?.(isQuestion(task) ? { task } : { problem: problem ?? NOTHING });
    }
  }
  model.on("msg:custom", hear);
  signal.addEventListener("abort", () => model.off("msg:custom", hear), { once: true });

  return (text) => new Promise((resolve) => {
    if (document.documentElement.dataset.kitSession === "page") {
      resolve({ problem: NOBODY });
      return;
    }
    count += 1;
    const id = count;
    const late = setTimeout(() => settle({ problem: SILENT }), PATIENCE_MS);
    /** @param {Found} found */
    function settle(found) {
      clearTimeout(late);
      waiting.delete(id);
      resolve(found);
    }
    waiting.set(id, settle);
    try {
      model.send({ kind: "wish", id, text });
    } catch {
      // There is no line to Python any more.
      settle({ problem: SILENT });
    }
  });
}

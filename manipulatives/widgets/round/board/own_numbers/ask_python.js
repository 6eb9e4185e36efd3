/**
 * Asking Python for a question with numbers of the teacher's own, with a timeout.
 *
 * @typedef {import("../../core/state/task.js").Task} Task
 * @typedef {{ task: Task } | { problem: string }} Found the question, or a sentence why there is
 *   none
 */
import { listenTo } from "../state/listen.js";
import { isTask } from "../state/extra.js";

const NO_ANSWER = "Python does not answer. Ready questions still work.";
const NOTHING = "Python found no question for that.";
const ANSWER_TIMEOUT_MS = 5000;

/**
 * @param {WidgetModel} model of the round
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {(text: string) => Promise<Found>}
 */
export function makeAskPython(model, { signal }) {
  /** @type {Map<number, (found: Found) => void>} */
  const waiting = new Map();
  let count = 0;

  /** @param {any} message */
  function receive(message) {
    if (message?.kind === "found") {
      const { task, problem } = message;
      waiting.get(message.id)?.(isTask(task) ? { task } : { problem: problem ?? NOTHING });
    }
  }
  listenTo(model, "msg:custom", receive, signal);
  signal.addEventListener("abort", () => {
    for (const settle of waiting.values()) {
      settle({ problem: NO_ANSWER });
    }
  }, { once: true });

  return (text) => new Promise((resolve) => {
    count += 1;
    const id = count;
    const late = setTimeout(() => settle({ problem: NO_ANSWER }), ANSWER_TIMEOUT_MS);
    /** @param {Found} found */
    function settle(found) {
      clearTimeout(late);
      waiting.delete(id);
      resolve(found);
    }
    waiting.set(id, settle);
    try {
      model.send({ kind: "typed", id, text });
    } catch {
      // The connection to Python has ended.
      settle({ problem: NO_ANSWER });
    }
  });
}

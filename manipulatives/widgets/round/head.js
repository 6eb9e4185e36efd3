/** Where in the round we are, and the question itself. */
import { html } from "../shared/svg.js";

// More pips than this are no longer taken in at a glance.
const MOST_PIPS = 20;

/**
 * @param {string} title
 * @param {HTMLElement} listen the button that reads aloud
 * @returns {{
 *   head: HTMLElement, ask: HTMLElement,
 *   paint: (place: import("./flow.js").Place, tasks: import("./flow.js").Task[]) => void,
 * }}
 */
export function makeHead(title, listen) {
  const count = html("span", { class: "round-count" });
  const pips = html("span", { class: "round-pips", "aria-hidden": "true" });
  const prompt = html("p", { class: "round-prompt", role: "heading", "aria-level": 3 });

  const name = html("span", { class: "round-title" }, title);

  return {
    head: html("div", { class: "round-head" }, name, count, pips),
    ask: html("div", { class: "round-ask" }, prompt, listen),
    paint({ task }, tasks) {
      prompt.textContent = tasks[task]?.prompt ?? "";
      count.textContent = tasks.length > 1 ? `Question ${task + 1} of ${tasks.length}` : "";
      pips.hidden = tasks.length < 2 || tasks.length > MOST_PIPS;
      pips.replaceChildren(...tasks.map((_, index) => {
        const state = index < task ? "is-done" : index === task ? "is-now" : "is-to-come";
        return html("i", { class: state });
      }));
    },
  };
}

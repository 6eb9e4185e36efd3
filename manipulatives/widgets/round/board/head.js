/** Where in the round we are, and the question itself. */
import { html } from "../../shared/svg.js";
import { makeParts } from "../core/parts.js";
import { written } from "../../shared/signs.js";

// More pips than this are no longer taken in at a glance.
const MOST_PIPS = 20;

/**
 * @typedef {object} Head
 * @property {string} text the question; "" where the cards say it all
 * @property {string[]} parts of it
 * @property {string} count which of the questions it is, in words
 * @property {number} tasks how many there are, 0 where none of them is asked
 * @property {number[]} group which of them are asked
 */

/**
 * @param {string} title
 * @param {HTMLElement} listen the button that reads aloud
 * @returns {{
 *   head: HTMLElement, ask: HTMLElement, paint: (head: Head) => void,
 * }}
 */
export function makeHead(title, listen) {
  const count = html("span", { class: "round-count" });
  const pips = html("span", { class: "round-pips", "aria-hidden": "true" });
  const prompt = html("p", { class: "round-prompt", role: "heading", "aria-level": 3 });
  const parts = makeParts();
  const name = html("span", { class: "round-title" }, title);
  const question = html("div", { class: "round-question" }, prompt, parts.el);

  return {
    head: html("div", { class: "round-head" }, name, count, pips),
    ask: html("div", { class: "round-ask" }, question, listen),
    paint({ text, parts: orders, count: words, tasks, group }) {
      prompt.replaceChildren(...written(text));
      prompt.hidden = text === "";
      parts.paint(orders);
      count.textContent = words;
      pips.hidden = tasks < 2 || tasks > MOST_PIPS;
      pips.replaceChildren(...Array.from({ length: tasks }, (_, index) => {
        const done = index < group[0] ? "is-done" : "is-to-come";
        return html("i", { class: group.includes(index) ? "is-now" : done });
      }));
    },
  };
}

/** Which question of how many a pupil is at, and the question itself with its listen button. */
import { html, put } from "../shared/svg.js";
import { makeParts } from "./parts.js";
import { questionOf, isDone } from "./pupil_items.js";
import { signed, written } from "../shared/signs.js";

const OFFER = "Here is a new one like it.";
const WATCH = "An example to watch.";

/**
 * @param {Node} listen the button that reads the question aloud
 * @returns {{
 *   head: HTMLElement, ask: HTMLElement, focus: () => void,
 *   paint: (desk: import("./pupil_desk.js").PupilDesk) => void,
 * }}
 */
export function makePupilHead(listen) {
  const count = html("span", { class: "round-count" });
  const pips = html("span", { class: "round-pips", "aria-hidden": "true" });
  const prompt = html("p", {
    class: "round-prompt", role: "heading", "aria-level": 3, tabindex: -1,
  });
  const parts = makeParts();
  const question = html("div", { class: "round-question" }, prompt, parts.el);
  const ear = html("div", { class: "round-ear" }, listen);
  const ask = html("div", { class: "round-ask" }, question, ear);

  return {
    head: html("div", { class: "round-head" }, count, pips),
    ask,
    focus() {
      prompt.focus({ preventScroll: true });
    },
    paint(desk) {
      const { items, at, item, tasks } = desk;
      const all = tasks.length;
      prompt.replaceChildren(...written(asksPupil(desk)));
      // An example is seen; only those who listen instead are told what it is.
      const watch = item.stage === "watch";
      const figures = figuresOf(desk.example.prompt);
      put(prompt, { "aria-label": watch && figures ? `${WATCH} ${figures}` : null });
      ask.classList.toggle("is-unseen", watch && !figures);
      ear.hidden = watch;
      parts.paint(item.stage === "try" ? desk.task.parts ?? [] : []);
      count.textContent = item.twin !== null ? "One more" : all > 1 ? `${at + 1} of ${all}` : "";
      pips.replaceChildren(...items.map((each, index) => {
        const past = isDone(each, questionOf(tasks, each)) || index < at;
        return html("i", { class: index === at ? "is-now" : past ? "is-done" : "is-to-come" });
      }));
      pips.hidden = items.length < 2;
    },
  };
}

/**
 * What stands above a pupil's manipulative.
 * @param {import("./pupil_desk.js").PupilDesk} desk
 * @returns {string}
 */
export function asksPupil({ item, task, example }) {
  if (item.stage === "watch") {
    return figuresOf(example.prompt) || WATCH;
  }
  return item.stage === "offer" ? OFFER : signed(task.prompt);
}

/**
 * What a voice says for it: a gap in a row of numbers has a name.
 * @param {import("./pupil_desk.js").PupilDesk} desk
 * @returns {string}
 */
export function spokenAsk(desk) {
  const parts = desk.item.stage === "try" ? desk.task.parts ?? [] : [];
  return [asksPupil(desk), ...parts].join(" ").replaceAll("_", "something");
}

/**
 * What of a question is understood without words: its numbers, and the signs between them.
 * @param {string} prompt such as "The bun costs 4\u00a2. Pay it."
 * @returns {string} such as "4\u00a2"
 */
export function figuresOf(prompt) {
  const words = prompt.split(" ").filter((word) => /\d|^[_?+\-=<>]+[.,]?$/.test(word));
  return signed(words.map((word) => word.replace(/[.?]$/, "")).join(" ")).replace(/,$/, "");
}

/** Which question of how many a pupil is at, and the question itself with its listen button. */
import { html, put } from "../../shared/svg.js";
import { makeParts } from "../core/parts.js";
import { signed, written } from "../../shared/signs.js";
import { figuresOf } from "./state/figures.js";

const OFFER = "Here is a new one like it.";
const WATCH = "An example to watch.";

/** @typedef {import("./state/progress.js").Progress} Progress */

/**
 * @param {Node} listen the button that reads the question aloud
 * @returns {{
 *   head: HTMLElement, ask: HTMLElement, focus: () => void,
 *   paint: (progress: Progress) => void,
 * }}
 */
export function makeHead(listen) {
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
    paint(progress) {
      const { items, at, item, task, past, tasks: { length: all } } = progress;
      prompt.replaceChildren(...written(promptFor(progress)));
      // An example is seen; only those who listen instead are told what it is.
      const watch = item.stage === "watch";
      const figures = figuresOf(progress.example.prompt);
      put(prompt, { "aria-label": watch && figures ? `${WATCH} ${figures}` : null });
      ask.classList.toggle("is-unseen", watch && !figures);
      ear.hidden = watch;
      parts.paint(item.stage === "try" ? task.parts ?? [] : []);
      count.textContent = item.twin !== null ? "One more" : all > 1 ? `${at + 1} of ${all}` : "";
      pips.replaceChildren(...past.map((done, index) => (
        html("i", { class: index === at ? "is-now" : done ? "is-done" : "is-to-come" })
      )));
      pips.hidden = items.length < 2;
    },
  };
}

/**
 * What stands above a pupil's manipulative.
 * @param {Progress} progress
 * @returns {string}
 */
export function promptFor({ item, task, example }) {
  if (item.stage === "watch") {
    return figuresOf(example.prompt) || WATCH;
  }
  return item.stage === "offer" ? OFFER : signed(task.prompt);
}

/**
 * What a voice says for it: a gap in a row of numbers has a name.
 * @param {Progress} progress
 * @returns {string}
 */
export function spokenPrompt(progress) {
  const parts = progress.item.stage === "try" ? progress.task.parts ?? [] : [];
  return [promptFor(progress), ...parts].join(" ").replaceAll("_", "something");
}

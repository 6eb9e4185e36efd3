/** The messages of the form: one sentence about what happened, or a list of remarks. */
import { announce } from "../widgets/shared/announce.js";
import { html } from "../widgets/shared/svg.js";

/**
 * @typedef {object} Model
 * @property {(name: string) => any} get
 * @property {(event: string, callback: () => void) => void} on
 * @property {(event: string, callback: () => void) => void} off
 */

/**
 * Show the lines of a notice, and announce them to screen readers.
 * @param {{ model: Model, el: HTMLElement, signal?: AbortSignal }} given
 */
function render({ model, el, signal }) {
  const ended = signal ?? new AbortController().signal;
  const root = html("div", { class: "kit kit-notice" });
  el.append(root);

  function paint() {
    const lines = /** @type {string[]} */ (model.get("lines"));
    root.dataset.tone = model.get("tone");
    root.hidden = lines.length === 0;
    root.replaceChildren(...lines.map((line) => html("p", {}, line)));
  }

  function onChange() {
    paint();
    announce(el, model.get("lines").join(" "));
  }
  paint();
  model.on("change", onChange);
  ended.addEventListener("abort", () => model.off("change", onChange), { once: true });
}

export default { render };

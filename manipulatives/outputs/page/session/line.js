/**
 * The line that says where in a lesson we are and how long it has taken, and the list of its
 * parts on the title.
 */
import { html } from "../../../widgets/shared/svg.js";

/** @typedef {import("../shared/stages.js").Stage} Stage */

/**
 * @param {(stage: number) => void} choose a part was pressed
 * @param {Node[]} tools what else stands in the line
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   bar: HTMLElement,
 *   contents: HTMLElement,
 *   list: (stages: Stage[], title: string) => void,
 *   mark: (stages: Stage[], shown: number) => void,
 *   time: (words: string, over: boolean) => void,
 * }} list() what there is, mark() where we are, time() how long it has taken
 */
export function makeLine(choose, tools, { signal }) {
  const lesson = html("span", { class: "session-lesson" });
  const heading = html("span", { class: "session-heading" });
  const count = html("span", { class: "session-count" });
  const clock = html("span", { class: "session-time" });
  const pips = html("ol", { class: "session-pips" });
  const words = html("div", { class: "session-words" }, lesson, heading);
  const where = html("nav", { "class": "session-where", "aria-label": "Parts" }, pips);
  const bar = html("div", { class: "session-bar" },
    words, where, html("div", { class: "session-state" }, count, clock),
    html("div", { class: "session-tools" }, ...tools));
  const contents = html("ol", { class: "session-contents" });

  for (const place of [pips, contents]) {
    place.addEventListener("click", (event) => {
      const hit = /** @type {Element} */ (event.target).closest("button");
      if (hit) {
        choose(Number(hit.dataset.stage));
      }
    }, { signal });
  }

  return {
    bar,
    contents,
    list(stages, title) {
      lesson.textContent = title;
      const one = stages.length === 1;
      where.hidden = one;
      count.hidden = one;
      const buttons = stages.map((stage, index) => {
        const name = nameOf(stage, index);
        return html("button", {
          "type": "button", "data-stage": index, "aria-label": name, "title": name,
        });
      });
      pips.replaceChildren(...buttons.map((button) => html("li", {}, button)));
      const parts = stages.flatMap((stage, index) => (stage.title ? [] : [html("li", {}, html(
        "button", { "type": "button", "class": "kit-button", "data-stage": index },
        nameOf(stage, index),
      ))]));
      contents.replaceChildren(...parts);
    },
    mark(stages, shown) {
      const now = stages[shown];
      const parts = stages.filter(({ title }) => !title);
      // The title says itself; elsewhere the line has to.
      words.classList.toggle("is-title", Boolean(now?.title));
      heading.textContent = now?.heading ?? "";
      count.textContent = now && !now.title ? `${parts.indexOf(now) + 1} of ${parts.length}` : "";
      for (const [index, pip] of pips.querySelectorAll("button").entries()) {
        pip.className = index < shown ? "is-done" : index === shown ? "is-now" : "is-to-come";
        if (index === shown) {
          pip.setAttribute("aria-current", "step");
          pips.scrollLeft = pip.offsetLeft - pips.offsetLeft - pips.clientWidth / 2;
        } else {
          pip.removeAttribute("aria-current");
        }
      }
    },
    time(said, over) {
      // Every second is not news.
      if (clock.textContent !== said) {
        clock.textContent = said;
      }
      clock.classList.toggle("is-over", over);
    },
  };
}

/**
 * What a part is called.
 * @param {Stage} stage
 * @param {number} index
 * @returns {string}
 */
export function nameOf({ heading, title }, index) {
  return heading || (title ? "Title" : `Part ${index + 1}`);
}

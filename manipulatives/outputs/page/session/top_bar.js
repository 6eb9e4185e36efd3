/**
 * The bar at the top of a board, with the place in the lesson and the time taken, and the list of
 * parts below the title.
 */
import { html } from "../../../widgets/shared/svg.js";

/** @typedef {import("../shared/stages.js").Stage} Stage */

/**
 * @param {(stage: number) => void} choose called when a part is pressed
 * @param {Node[]} tools the buttons at its end
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   bar: HTMLElement,
 *   contents: HTMLElement,
 *   list: (stages: Stage[], title: string) => void,
 *   mark: (stages: Stage[], shown: number) => void,
 *   time: (words: string, over: boolean) => void,
 * }} list() shows the parts, mark() which of them is current, time() how long it has taken
 */
export function makeTopBar(choose, tools, { signal }) {
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
      // On the title the heading repeats the name of the lesson.
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
    time(text, over) {
      // Most seconds the text stays the same.
      if (clock.textContent !== text) {
        clock.textContent = text;
      }
      clock.classList.toggle("is-over", over);
    },
  };
}

/**
 * The name of a part.
 * @param {Stage} stage
 * @param {number} index
 * @returns {string}
 */
export function nameOf({ heading, title }, index) {
  return heading || (title ? "Title" : `Part ${index + 1}`);
}

/**
 * Questions side by side, as written on a whiteboard: large while they are asked and worked on,
 * a row of small ones while one of them is shown, each with its answer once that is revealed.
 */
import { html } from "../shared/svg.js";
import { alike } from "../shared/alike.js";
import { button } from "./button.js";
import { LETTERS, sharedWords } from "./group.js";
import { signed, written } from "../shared/signs.js";

// A sum stands on one line as large as its card allows; more words than that are a sentence.
const LINE = 14;

/**
 * @param {(task: number) => void} choose
 * @param {{ signal: AbortSignal }} life
 * @returns {{ el: HTMLElement, paint: (desk: import("./desk.js").Desk) => void }}
 */
export function makeCards(choose, { signal }) {
  const el = html("div", {
    class: "round-cards", role: "group", "aria-label": "Questions side by side", hidden: "",
  });
  /** @type {{ group: number[], prompts: string[] }} */
  let shown = { group: [], prompts: [] };

  el.addEventListener("click", (event) => {
    const card = /** @type {Element} */ (event.target).closest("button");
    if (card) {
      choose(Number(card.dataset.task));
    }
  }, { signal });

  return {
    el,
    paint({ together, working, group, place, open, tasks }) {
      el.hidden = !together;
      const now = { group, prompts: group.map((task) => tasks[task].prompt) };
      if (together && !alike(now, shown)) {
        shown = now;
        const { own } = sharedWords(now.prompts);
        // All sums of a group are written in one size, and all sentences.
        const sums = own.map(({ length }) => length).filter((length) => length <= LINE);
        el.style.setProperty("--letters", String(Math.max(...sums, 1)));
        el.style.setProperty("--longest", String(Math.max(...own.map(({ length }) => length))));
        el.replaceChildren(...group.map((task, index) => cardOf(task, index, own[index])));
      }
      for (const card of together ? el.children : []) {
        const task = Number(/** @type {HTMLElement} */ (card).dataset.task);
        const chosen = !working && task === place.task;
        if (chosen) {
          card.setAttribute("aria-current", "true");
        } else {
          card.removeAttribute("aria-current");
        }
        const found = /** @type {HTMLElement} */ (card.lastElementChild);
        found.hidden = !open.includes(task);
        found.textContent = open.includes(task) ? signed(tasks[task].answer) : "";
      }
    },
  };
}

/**
 * @param {number} task
 * @param {number} index
 * @param {string} words
 */
function cardOf(task, index, words) {
  const card = button(
    "card", { "data-task": task },
    html("span", { class: "round-letter" }, LETTERS[index]), " ",
    html("span", { class: "round-sum" }, ...written(words)), " ",
    html("strong", { class: "round-found" }),
  );
  card.classList.toggle("is-line", words.length <= LINE);
  return card;
}

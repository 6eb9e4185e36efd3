/**
 * Questions side by side, as written on a whiteboard: large while they are asked and worked on,
 * a row of small ones while one of them is shown, each with its answer once that is revealed.
 */
import { html, put } from "../../shared/svg.js";
import { alike } from "../../shared/state/alike.js";
import { button } from "../core/button.js";
import { signed, written } from "../../shared/signs.js";
import { sharedWords } from "./state/shared_words.js";

// What each of them is called on a board.
const LETTERS = Object.freeze(["a", "b", "c", "d"]);

// A sum stands on one line as large as its card allows; more words than that are a sentence.
const LINE = 14;

/**
 * @typedef {object} Card one of the questions
 * @property {number} task
 * @property {string} prompt
 * @property {string | null} answer null while it may not be seen
 * @property {boolean} current whether it is the one that is shown
 */

/**
 * @param {(task: number) => void} choose
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ el: HTMLElement, paint: (cards: Card[]) => void }} paint() takes none where no
 *   questions stand side by side
 */
export function makeCards(choose, { signal }) {
  const el = html("div", {
    class: "round-cards", role: "group", "aria-label": "Questions side by side", hidden: "",
  });
  /** @type {{ task: number, prompt: string }[]} */
  let shown = [];

  el.addEventListener("click", (event) => {
    const card = /** @type {Element} */ (event.target).closest("button");
    if (card) {
      choose(Number(card.dataset.task));
    }
  }, { signal });

  return {
    el,
    paint(cards) {
      el.hidden = !cards.length;
      const now = cards.map(({ task, prompt }) => ({ task, prompt }));
      if (cards.length && !alike(now, shown)) {
        shown = now;
        const { own } = sharedWords(now.map(({ prompt }) => prompt));
        // All sums of a group are written in one size, and all sentences.
        const sums = own.map(({ length }) => length).filter((length) => length <= LINE);
        el.style.setProperty("--letters", String(Math.max(...sums, 1)));
        el.style.setProperty("--longest", String(Math.max(...own.map(({ length }) => length))));
        el.replaceChildren(...cards.map(({ task }, index) => cardOf(task, index, own[index])));
      }
      for (const [index, { answer, current }] of cards.entries()) {
        const card = el.children[index];
        put(card, { "aria-current": current ? "true" : null });
        const found = /** @type {HTMLElement} */ (card.lastElementChild);
        found.hidden = answer === null;
        found.textContent = answer === null ? "" : signed(answer);
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

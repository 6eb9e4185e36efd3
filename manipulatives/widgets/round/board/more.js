/** What else may be done with a question, beside going on and back. */
import { html } from "../../shared/svg.js";
import { button } from "../core/button.js";

/**
 * @typedef {"explain" | "reveal" | "twin" | "numbers" | "apart"} More
 * @typedef {Record<More, boolean> & { alone: boolean }} Offered what can be done just now, and
 *   whether each question is asked alone where several could be
 */

/**
 * @param {(what: More) => void} act
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{ el: HTMLElement, paint: (offered: Offered) => void }}
 */
export function makeMore(act, { signal }) {
  /** @type {Record<More, HTMLButtonElement>} */
  const all = {
    explain: moreButton("explain", "See the steps"),
    reveal: moreButton("reveal", "All answers"),
    twin: moreButton("twin", "Another like this"),
    numbers: moreButton("numbers", "Own numbers"),
    apart: moreButton("apart", ""),
  };
  const el = html("div", { class: "round-more" }, ...Object.values(all));

  el.addEventListener("click", (event) => {
    const pressed = /** @type {Element} */ (event.target).closest("button");
    if (pressed) {
      act(/** @type {More} */ (pressed.dataset.more));
    }
  }, { signal });

  return {
    el,
    paint({ alone, ...offered }) {
      for (const [what, each] of Object.entries(all)) {
        each.hidden = !offered[/** @type {More} */ (what)];
      }
      all.apart.textContent = alone ? "Side by side" : "One at a time";
      el.hidden = Object.values(all).every((each) => each.hidden);
    },
  };
}

/**
 * @param {More} what
 * @param {string} words
 */
function moreButton(what, words) {
  return button(what, { "data-more": what }, words);
}

/** What else may be done with a question, beside going on and back. */
import { html } from "../shared/svg.js";
import { button } from "./button.js";

/** @typedef {"explain" | "reveal" | "twin" | "wish" | "apart"} More */

/**
 * @param {(what: More) => void} act
 * @param {{ signal: AbortSignal }} life
 * @returns {{ el: HTMLElement, paint: (desk: import("./desk.js").Desk) => void }}
 */
export function makeMore(act, { signal }) {
  /** @type {Record<More, HTMLButtonElement>} */
  const all = {
    explain: moreButton("explain", "See the steps"),
    reveal: moreButton("reveal", "All answers"),
    twin: moreButton("twin", "Another like this"),
    wish: moreButton("wish", "Own numbers"),
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
    paint(desk) {
      const { place: { phase }, working, together, solved, several, taste } = desk;
      const shown = phase === "show" || phase === "check";
      all.explain.hidden = !(working && solved && desk.steps) || together;
      all.reveal.hidden = !together || desk.open.length === desk.group.length || phase === "show";
      all.twin.hidden = !shown || !desk.twinned;
      all.wish.hidden = !shown || !desk.typed;
      all.apart.hidden = !several || !working || Boolean(desk.aside);
      all.apart.textContent = taste.apart ? "Side by side" : "One at a time";
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

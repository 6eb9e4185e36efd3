/** The bar at the foot: back, on, and the time. */
import { html } from "../../shared/svg.js";
import { button, emphasize } from "../core/button.js";

/** What the button says that goes on.
 * @type {Readonly<Record<import("./state/flow.js").Turn, string>>}
 */
const WORDS = Object.freeze({
  start: "Start",
  first: "First step",
  step: "Next step",
  answer: "Show the answer",
  item: "Next one",
  question: "Next question",
  wipe: "Count and wipe",
  count: "Count",
  home: "Back to our question",
  end: "Next round",
});

/**
 * @param {{ next: () => void, back: () => void }} go
 * @param {HTMLElement} bar the time
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   el: HTMLElement,
 *   focus: () => void,
 *   paint: (turn: import("./state/flow.js").Turn, leads: boolean) => void,
 * }} paint() takes what a press on does, and whether that is the thing to do
 */
export function makeFoot(go, bar, { signal }) {
  const back = button("back", {}, "Back");
  const next = button("next", { "data-kit-next": "" });
  const end = html("span", { class: "round-end" }, "End of the round");
  const el = html("div", { class: "round-foot" }, back, next, end, bar);

  back.addEventListener("click", go.back, { signal });
  next.addEventListener("click", go.next, { signal });

  return {
    el,
    focus() {
      next.focus({ preventScroll: true });
    },
    paint(turn, leads) {
      next.textContent = WORDS[turn];
      emphasize(next, leads);
    },
  };
}

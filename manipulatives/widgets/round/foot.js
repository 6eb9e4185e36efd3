/** The bar at the foot: back, on, and the time. */
import { html } from "../shared/svg.js";
import { button, lead } from "./button.js";

/** What the button says that goes on.
 * @type {Readonly<Record<import("./flow.js").Turn, string>>}
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
 * @param {{ signal: AbortSignal }} life
 * @returns {{
 *   el: HTMLElement,
 *   focus: () => void,
 *   paint: (desk: import("./desk.js").Desk) => void,
 * }}
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
    paint({ turn, solved, working, together }) {
      next.textContent = WORDS[turn];
      // Before a question is answered, trying is the thing to do, not looking.
      lead(next, solved || !working || together || turn === "start");
    },
  };
}

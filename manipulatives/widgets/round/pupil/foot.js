/** The bar at a pupil's foot: a hint, and the one button that leads on. */
import { html, icon } from "../../shared/svg.js";
import { button, emphasize } from "../core/button.js";

const BULB = "M9 17.5 H15 M10 21 H14 M8.5 14.5 A6 6 0 1 1 15.5 14.5 C15 15.2 15 16 15 17.5 H9 " +
  "C9 16 9 15.2 8.5 14.5 Z";

/** @typedef {"start" | "resume" | "step" | "next"} Onward */

/**
 * What the button that leads on does.
 * @param {import("./state/progress.js").Progress} progress
 * @returns {{ act: Onward, words: string } | null} null while an answer is awaited
 */
export function onwardOf({ item, done, spent }) {
  if (item.stage === "watch") {
    return { act: "start", words: "My turn" };
  }
  if (item.stage === "offer") {
    return { act: "start", words: "Try it" };
  }
  if (done) {
    return { act: "next", words: "Next" };
  }
  if (item.peek) {
    return { act: "resume", words: "My turn" };
  }
  if (item.stage === "steps") {
    return { act: "step", words: "Next step" };
  }
  return spent ? { act: "step", words: "See the steps" } : null;
}

/**
 * @param {(act: Onward | "hint" | "skip") => void} act
 * @param {HTMLElement} play the button that plays an example
 * @param {HTMLElement} bar the time
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   el: HTMLElement, focus: () => void,
 *   paint: (progress: import("./state/progress.js").Progress) => void,
 * }}
 */
export function makeFoot(act, play, bar, { signal }) {
  const hint = button("hint", {}, icon(BULB), "Hint");
  const skip = button("skip", {}, "Go on");
  const on = button("next", { "data-kit-next": "" });
  emphasize(on, true);
  const el = html("div", { class: "round-foot" }, hint, play, skip, on, bar);
  /** @type {Onward} */
  let next = "next";

  hint.addEventListener("click", () => act("hint"), { signal });
  skip.addEventListener("click", () => act("skip"), { signal });
  on.addEventListener("click", () => act(next), { signal });

  return {
    el,
    focus() {
      on.focus({ preventScroll: true });
    },
    paint(progress) {
      const { item: { stage, peek }, task, open } = progress;
      const leads = onwardOf(progress);
      hint.hidden = !open || peek || !task.steps.length;
      play.hidden = stage !== "watch";
      skip.hidden = stage !== "offer";
      on.hidden = !leads;
      on.textContent = leads?.words ?? "";
      next = leads?.act ?? next;
      el.hidden = hint.hidden && on.hidden && bar.hidden;
    },
  };
}

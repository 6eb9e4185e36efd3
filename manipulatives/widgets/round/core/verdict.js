/** What is said to an answer: one sentence, with a mark that does not rest on its colour. */
import { html, icon } from "../../shared/svg.js";

const RIGHT = "M4 12.5 L10 18.5 L20 6.5";
const AGAIN = "M19.5 12 A7.5 7.5 0 1 1 17 6.4 M17.5 2.5 V7 H13";

/** @typedef {Pick<import("./state/judge.js").Verdict, "right" | "say" | "given">} Said */

/**
 * @returns {{ el: HTMLElement, paint: (said: Said | null) => void }}
 */
export function makeVerdict() {
  const el = html("p", { class: "round-verdict" });

  return {
    el,
    paint(said) {
      el.hidden = !said;
      if (said) {
        const { right, given, say } = said;
        el.dataset.right = String(right);
        el.replaceChildren(icon(right ? RIGHT : AGAIN), html("span", {}, say));
        if (right && typeof given === "string") {
          el.append(html("strong", {}, given));
        }
      }
    },
  };
}

/** The parts of a question, as a numbered list: read it aloud, then write it in expanded form. */
import { html } from "../../shared/svg.js";
import { signed } from "../../shared/signs.js";

/**
 * @returns {{ el: HTMLElement, paint: (parts: string[]) => void }}
 */
export function makeParts() {
  const el = html("ol", { class: "round-parts", hidden: "" });

  return {
    el,
    paint(parts) {
      el.hidden = !parts.length;
      el.replaceChildren(...parts.map((part) => html("li", {}, signed(part))));
    },
  };
}

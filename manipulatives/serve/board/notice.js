/** A line over the board for what the teacher has to know; it moves nothing that stands below. */
import { html } from "../../widgets/shared/svg.js";

/**
 * @param {HTMLElement} el the line, empty and hidden; it is announced politely
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {(sentence: string, reload?: boolean) => void} say: "" removes the notice
 */
export function makeNotice(el, { signal }) {
  return (sentence, reload = false) => {
    el.hidden = sentence === "";
    el.replaceChildren();
    if (!sentence) {
      return;
    }
    const close = html("button", { type: "button", class: "kit-button" }, "Close");
    close.addEventListener("click", () => {
      el.hidden = true;
    }, { signal });
    const again = html("button", { type: "button", class: "kit-button" }, "Load again");
    again.addEventListener("click", () => location.reload(), { signal });
    el.append(html("span", {}, sentence), ...(reload ? [again] : []), close);
  };
}

/** The worked steps as they are shown, one press at a time, and the answer at their end. */
import { html } from "../shared/svg.js";

/**
 * @returns {{
 *   el: HTMLElement,
 *   paint: (task: import("./flow.js").Task, place: import("./flow.js").Place) => void,
 * }}
 */
export function makeShowing() {
  const list = html("ol", { class: "round-steps" });
  const aloud = html("p", { class: "round-aloud" });
  const answer = html("p", { class: "round-answer" });
  const label = html("small", {}, "everyone says");
  const everyone = html("div", { class: "round-everyone" }, label, aloud);
  const el = html("div", { class: "round-showing" }, list, everyone, answer);

  return {
    el,
    paint({ steps, answer: right, spoken }, { step, phase }) {
      const done = phase === "check";
      const said = steps.slice(0, step).map(({ say }, index) => {
        const now = !done && index === step - 1;
        return html("li", now ? { "aria-current": "step" } : {}, say);
      });
      list.replaceChildren(...said);
      const chorus = done ? "" : steps[step - 1]?.class ?? "";
      everyone.hidden = !chorus;
      aloud.textContent = chorus;
      answer.hidden = !done;
      answer.replaceChildren(html("strong", {}, right), html("span", {}, spoken));
      // The newest line is in sight, however many there are.
      list.scrollTop = list.scrollHeight;
    },
  };
}

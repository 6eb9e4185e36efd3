/** The worked steps as they are shown, one press at a time, and the answer at their end. */
import { html, put } from "../../shared/svg.js";
import { signed, written } from "../../shared/signs.js";

/**
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {{
 *   el: HTMLElement,
 *   paint: (
 *     task: import("../core/state/task.js").Task, place: import("./state/flow.js").Place,
 *   ) => void,
 * }}
 */
export function makeSteps({ signal }) {
  const list = html("ol", { class: "round-steps" });
  const aloud = html("p", { class: "round-aloud" });
  const answer = html("p", { class: "round-answer" });
  const label = html("small", {}, "everyone says");
  const everyone = html("div", { class: "round-everyone" }, label, aloud);
  const el = html("div", { class: "round-showing" }, list, everyone, answer);

  // It may have another room after what stands around it was shown, too.
  const room = new ResizeObserver(settle);
  room.observe(list);
  signal.addEventListener("abort", () => room.disconnect(), { once: true });

  /** Bring the newest line in sight, however many there are. */
  function settle() {
    list.scrollTop = list.scrollHeight;
    const long = list.scrollTop > 1;
    list.classList.toggle("is-long", long);
    // What is scrolled can be scrolled by keys.
    put(list, { tabindex: long ? 0 : null, "aria-label": "Steps so far" });
  }

  return {
    el,
    paint({ steps, answer: right, spoken }, { step, phase }) {
      const done = phase === "check";
      const said = steps.slice(0, step).map(({ say }, index) => {
        const now = !done && index === step - 1;
        return html("li", now ? { "aria-current": "step" } : {}, ...written(say));
      });
      list.replaceChildren(...said);
      const chorus = done ? "" : steps[step - 1]?.class ?? "";
      everyone.hidden = !chorus;
      aloud.replaceChildren(...written(chorus));
      answer.hidden = !done;
      const words = spoken === right ? [] : [html("span", {}, ...written(spoken))];
      answer.replaceChildren(html("strong", {}, signed(right)), ...words);
      settle();
    },
  };
}

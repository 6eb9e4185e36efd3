/** The worked steps as a pupil sees them: one by one, each to be listened to, then the answer. */
import { html, put } from "../../shared/svg.js";
import { signed, written } from "../../shared/signs.js";

/**
 * @param {Node} listen reads the newest step aloud
 * @returns {{
 *   el: HTMLElement,
 *   paint: (task: import("../core/state/task.js").Task, shown: number, end: boolean) => void,
 * }} paint() so many of the steps, and at their end the answer
 */
export function makeSteps(listen) {
  const list = html("ol", { class: "round-steps" });
  const answer = html("p", { class: "round-answer" });
  const said = html("div", { class: "round-spoken" }, list, listen);
  const el = html("div", { class: "round-showing" }, said, answer);

  return {
    el,
    paint({ steps, answer: right, spoken }, shown, end) {
      const newest = shown - 1;
      list.replaceChildren(...steps.slice(0, shown).map(({ say }, index) => (
        html("li", index === newest ? { "aria-current": "step" } : {}, ...written(say))
      )));
      said.hidden = !shown;
      answer.hidden = !end;
      const words = spoken === right ? [] : [html("span", {}, ...written(spoken))];
      // What is not due yet stands nowhere.
      answer.replaceChildren(...(end ? [html("strong", {}, signed(right)), ...words] : []));
      el.hidden = !shown && !end;
      list.scrollTop = list.scrollHeight;
      const long = list.scrollTop > 1;
      // What is scrolled can be scrolled by keys.
      put(list, { tabindex: long ? 0 : null, "aria-label": "Steps so far" });
    },
  };
}

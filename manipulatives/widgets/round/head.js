/** Where in the round we are, and the question itself. */
import { html } from "../shared/svg.js";
import { sharedWords } from "./group.js";
import { makeParts } from "./parts.js";
import { written } from "../shared/signs.js";

// More pips than this are no longer taken in at a glance.
const MOST_PIPS = 20;

/**
 * @param {string} title
 * @param {HTMLElement} listen the button that reads aloud
 * @returns {{
 *   head: HTMLElement, ask: HTMLElement, paint: (desk: import("./desk.js").Desk) => void,
 * }}
 */
export function makeHead(title, listen) {
  const count = html("span", { class: "round-count" });
  const pips = html("span", { class: "round-pips", "aria-hidden": "true" });
  const prompt = html("p", { class: "round-prompt", role: "heading", "aria-level": 3 });
  const parts = makeParts();
  const name = html("span", { class: "round-title" }, title);
  const question = html("div", { class: "round-question" }, prompt, parts.el);

  return {
    head: html("div", { class: "round-head" }, name, count, pips),
    ask: html("div", { class: "round-ask" }, question, listen),
    paint(desk) {
      const { place, task, tasks, working, together } = desk;
      const group = together ? desk.group : [place.task];
      const beside = together && working
        ? sharedWords(group.map((each) => tasks[each].prompt)).told : null;
      prompt.replaceChildren(...written(beside ?? asks(desk)));
      prompt.hidden = beside === "";
      parts.paint(working ? task?.parts ?? [] : []);
      count.textContent = counted(desk);
      const apart = Boolean(desk.aside) || place.phase === "wipe";
      pips.hidden = tasks.length < 2 || tasks.length > MOST_PIPS || apart;
      pips.replaceChildren(...tasks.map((_, index) => {
        const done = index < group[0] ? "is-done" : "is-to-come";
        return html("i", { class: group.includes(index) ? "is-now" : done });
      }));
    },
  };
}

/**
 * What is asked, in words.
 * @param {import("./desk.js").Desk} desk
 * @returns {string}
 */
export function asks({ place, task, counts }) {
  return place.phase === "wipe" ? `Count together in steps of ${counts[0]}.`
    : task?.prompt ?? "";
}

/** @param {import("./desk.js").Desk} desk */
function counted({ place, tasks, aside, together, group }) {
  if (place.phase === "wipe") {
    return "Count aloud";
  }
  if (aside) {
    return "task" in aside ? "Numbers of our own" : "Another like this";
  }
  const all = tasks.length;
  if (all < 2) {
    return "";
  }
  return together ? `Questions ${group[0] + 1} to ${(group.at(-1) ?? 0) + 1} of ${all}`
    : `Question ${place.task + 1} of ${all}`;
}

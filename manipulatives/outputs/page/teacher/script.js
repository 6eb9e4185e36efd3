/**
 * What a teacher reads while teaching: what to say, what the class answers, the steps, the
 * answers, the time, and three marks for how the round went. It stands in a window of its own or
 * in a panel beside the board.
 */
import { button } from "../../../widgets/shared/controls.js";
import { html, put } from "../../../widgets/shared/svg.js";
import { MARKS, wordsOf } from "./marks.js";
import { makeSaving } from "../shared/saving.js";
import { inDigits } from "./spent.js";

/**
 * @typedef {import("./marks.js").Mark} Mark
 *
 * @typedef {object} Told a task, as a round tells it
 * @property {string} [prompt]
 * @property {string} [say]
 * @property {string} [answer]
 * @property {string} [spoken]
 * @property {{ say: string, class: string }[]} [steps]
 * @property {{ answer: string | null, teacher?: string }[]} [mistakes]
 *
 * @typedef {object} Part one part of the lesson
 * @property {string} name
 * @property {boolean} round
 * @property {number} used milliseconds
 * @property {number} planned seconds; 0 when nobody said
 * @property {Mark | null} mark
 *
 * @typedef {object} Place
 * @property {number} task
 * @property {number} step
 * @property {string} phase
 * @property {number[]} [group] the tasks that are asked side by side
 * @property {Told | null} [aside] a task that is shown instead, such as a twin
 *
 * @typedef {object} View everything that can be read
 * @property {string} heading
 * @property {string} count
 * @property {string} timer what the round's own timer says, "" for none
 * @property {Part[]} parts
 * @property {number} now which of them is shown, -1 for the title
 * @property {Told[]} tasks of the round that is shown
 * @property {Place | null} place in it
 *
 * @typedef {object} Acts
 * @property {() => void} next
 * @property {() => void} back
 * @property {() => void} answers
 * @property {() => void} timer
 * @property {() => void} again
 * @property {(part: number) => void} show
 * @property {(mark: Mark) => void} mark
 * @property {() => { name: string, text: string }} file
 * @property {() => void} fresh
 *
 * @typedef {object} Script
 * @property {HTMLElement} el
 * @property {(view: View) => void} paint
 * @property {(shown: boolean) => void} reveal show or hide what gives an answer away
 */

/**
 * @param {Acts} acts
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {Script}
 */
export function makeScript(acts, lifetime) {
  let now = -1;
  const heading = html("h2", { class: "script-heading" });
  const clocks = html("dl", { class: "script-clocks" });
  const onward = [
    button(["Back"], acts.back, lifetime),
    button(["Next"], acts.next, lifetime, { class: "kit-button is-go" }),
    button(["Answer on the board"], acts.answers, lifetime),
    button(["Start or pause the timer"], acts.timer, lifetime),
  ];
  const say = html("div", { class: "script-say" });
  const secret = html("div", { class: "script-secret" });
  const marks = MARKS.map(([mark, words]) => button([words], () => acts.mark(mark), lifetime));
  const went = group("How did this round go?", "script-marks", marks);
  const again = button(["Repeat this round"], acts.again, lifetime);
  const skip = button(["Skip to the next"], () => acts.show(now + 1), lifetime);
  const list = html("ol", { class: "script-parts" });
  const parts = group("Rounds", "script-rounds", [
    html("div", { class: "script-row" }, again, skip), list,
  ]);
  const el = html("div", { class: "script" },
    html("div", { class: "script-read" }, heading, say, secret),
    html("div", { class: "script-do" },
      clocks, html("div", { class: "script-row" }, ...onward), went, parts,
      makeSaving(acts.file, lifetime), makeFresh(acts.fresh, lifetime)));
  list.addEventListener("click", (event) => {
    const hit = /** @type {Element} */ (event.target).closest("button");
    if (hit) {
      acts.show(Number(hit.dataset.part));
    }
  }, lifetime);

  /** @param {View} view */
  function paintClocks({ parts: all, timer }) {
    const here = all[now];
    const rows = [
      ["Lesson", against(sum(all, "used"), sum(all, "planned"))],
      ["This round", here?.round ? against(here.used, here.planned) : ""],
      ["Timer", timer],
    ];
    renew(clocks, rows.filter(([, words]) => words), ([name, words]) =>
      html("div", {}, html("dt", {}, name), html("dd", {}, words)));
  }

  /** @param {View} view */
  function paintParts({ parts: all }) {
    renew(list, all.map(({ name }) => name), (name, index) => html("li", {}, html(
      "button", { "type": "button", "class": "kit-button", "data-part": index },
      html("span", {}, name), html("span", { class: "script-part-time" }),
      html("span", { class: "script-part-mark" }),
    )));
    for (const [index, hit] of list.querySelectorAll("button").entries()) {
      const { used, planned, mark } = all[index];
      const [, time, said] = hit.children;
      write(time, used ? against(used, planned) : planned ? inDigits(1000 * planned) : "");
      write(said, wordsOf(mark));
      put(hit, { "aria-current": index === now ? "step" : null });
    }
  }

  return {
    el,
    reveal(shown) {
      secret.hidden = !shown;
    },
    paint(view) {
      now = view.now;
      const here = view.parts[now];
      const { tasks, place } = view;
      write(heading, [view.heading, view.count].filter(Boolean).join(" \u00b7 "));
      paintClocks(view);
      paintParts(view);
      for (const [index, [mark]] of MARKS.entries()) {
        put(marks[index], { "aria-pressed": here?.mark === mark });
      }
      went.hidden = !here?.round;
      again.hidden = !here?.round;
      put(skip, { "aria-disabled": now >= view.parts.length - 1 });
      onward[2].hidden = !here?.round;
      onward[3].hidden = !here?.round;
      const task = place?.aside ?? tasks[place?.task ?? 0];
      renew(say, task ? [{ task, place, tasks }] : [], asked);
      renew(secret, task ? [{ task, place, tasks }] : [], known);
    },
  };
}

/**
 * The question, or those that are asked together, and what to say.
 * @param {{ task: Told, place: View["place"], tasks: Told[] }} given
 * @returns {HTMLElement}
 */
function asked({ task, place, tasks }) {
  const number = `Question ${(place?.task ?? 0) + 1} of ${tasks.length}`;
  const together = place?.aside ? [task] : (place?.group ?? []).map((each) => tasks[each] ?? task);
  const prompts = new Set([task, ...together].map(({ prompt }) => prompt ?? ""));
  return html("div", {},
    html("p", { class: "script-quiet" }, place?.aside ? "Another question" : number),
    ...[...prompts].map((prompt) => html("p", { class: "script-prompt" }, prompt)),
    ...(task.say ? [html("p", { class: "script-speech" }, task.say)] : []));
}

/**
 * What gives the answer away: steps, answer, what wrong answers may mean, all other answers.
 * @param {{ task: Told, place: View["place"], tasks: Told[] }} given
 * @returns {HTMLElement}
 */
function known({ task, place, tasks }) {
  const steps = (task.steps ?? []).map((step, index) => html("li", {
    "aria-current": place?.phase === "show" && index === place.step - 1 ? "step" : null,
  }, step.say, ...(step.class ? [html("span", { class: "script-class" }, "Class: ", step.class)]
    : [])));
  const slips = (task.mistakes ?? []).filter(({ teacher }) => teacher).map(
    ({ answer, teacher }) => html("li", {}, answer ? `${answer}: ` : "", teacher ?? ""),
  );
  const said = task.spoken && task.spoken !== task.answer ? ` (${task.spoken})` : "";
  return html("div", {},
    html("p", { class: "script-answer" }, html("span", { class: "script-quiet" }, "Answer "),
      `${task.answer ?? ""}${said}`),
    ...(steps.length ? [html("h3", {}, "Steps"), html("ol", {}, ...steps)] : []),
    ...(slips.length ? [html("details", {},
      html("summary", {}, "What a wrong answer may mean"), html("ul", {}, ...slips))] : []),
    html("h3", {}, "All answers of this round"),
    html("ol", { class: "script-answers" }, ...tasks.map(({ answer }, index) => html(
      "li", { "aria-current": index === (place?.task ?? 0) ? "step" : null }, answer ?? "",
    ))));
}

/**
 * A way to begin the lesson anew, which asks once.
 * @param {() => void} act
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {HTMLElement}
 */
function makeFresh(act, lifetime) {
  const ask = button(["Start the lesson afresh"], () => turn(true), lifetime);
  const clear = button(["Clear it"], act, lifetime);
  const keep = button(["Keep it"], () => turn(false), lifetime);
  const sure = html("div", { class: "script-row" },
    html("p", {}, "This clears marks, times, answers and the pen."), clear, keep);
  sure.hidden = true;

  /** @param {boolean} asking */
  function turn(asking) {
    sure.hidden = !asking;
    ask.hidden = asking;
    (asking ? keep : ask).focus();
  }

  return html("div", { class: "script-fresh" }, ask, sure);
}

/**
 * @param {string} name
 * @param {string} kind
 * @param {Node[]} content
 * @returns {HTMLElement}
 */
function group(name, kind, content) {
  return html("section", { "class": kind, "role": "group", "aria-label": name },
    html("h3", {}, name), ...content);
}

/**
 * Make the children of an element anew, but only when they would be others.
 * @template Item
 * @param {HTMLElement & { kitShown?: string }} el
 * @param {Item[]} items plain data
 * @param {(item: Item, index: number) => Node} make
 */
function renew(el, items, make) {
  const shown = JSON.stringify(items);
  if (el.kitShown !== shown) {
    el.kitShown = shown;
    el.replaceChildren(...items.map(make));
  }
}

/**
 * @param {Element} el
 * @param {string} words
 */
function write(el, words) {
  if (el.textContent !== words) {
    el.textContent = words;
  }
}

/**
 * @param {Part[]} all
 * @param {"used" | "planned"} what
 * @returns {number}
 */
function sum(all, what) {
  return all.reduce((whole, part) => whole + part[what], 0);
}

/**
 * @param {number} used milliseconds
 * @param {number} planned seconds
 * @returns {string}
 */
function against(used, planned) {
  const taken = inDigits(used);
  return planned ? `${taken} of ${inDigits(1000 * planned)}` : taken;
}

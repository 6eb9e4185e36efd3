/**
 * What a teacher reads while teaching: what to say, what the class answers, the steps, the
 * answers, the time, and three marks for how the round went. It is shown in a separate window or in
 * a panel beside the board.
 */
import { button } from "../../../widgets/shared/controls.js";
import { html, put } from "../../../widgets/shared/svg.js";
import { MARKS, wordsOf } from "./marks.js";
import { makeSaving } from "../shared/saving.js";
import { inDigits } from "./time_used.js";

/**
 * @typedef {import("./marks.js").Mark} Mark
 *
 * @typedef {object} TaskInfo a task, as "kit:round" carries it
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
 * @property {number} planned seconds; 0 when unknown
 * @property {Mark | null} mark
 *
 * @typedef {object} Place
 * @property {number} task
 * @property {number} step
 * @property {string} phase
 * @property {number[]} [group] the tasks that are asked side by side
 * @property {TaskInfo | null} [extra] a task that is shown instead, such as a twin
 *
 * @typedef {object} View everything that the script shows
 * @property {string} heading
 * @property {string} count
 * @property {string} timer the text of the round's timer, "" for none
 * @property {Part[]} parts
 * @property {number} now index of the current part, -1 on the title
 * @property {TaskInfo[]} tasks of the round that is shown
 * @property {Place | null} place in it
 *
 * @typedef {object} Acts
 * @property {() => void} next
 * @property {() => void} back
 * @property {() => void} answers
 * @property {() => void} timer
 * @property {() => void} repeatRound
 * @property {(part: number) => void} show
 * @property {(mark: Mark) => void} mark
 * @property {() => { name: string, text: string }} file
 * @property {() => void} restart
 *
 * @typedef {object} Script
 * @property {HTMLElement} el
 * @property {(view: View) => void} paint
 * @property {(shown: boolean) => void} reveal show or hide the answers
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
  const speech = html("div", { class: "script-say" });
  const answers = html("div", { class: "script-secret" });
  const marks = MARKS.map(([mark, words]) => button([words], () => acts.mark(mark), lifetime));
  const markGroup = group("How did this round go?", "script-marks", marks);
  const repeatButton = button(["Repeat this round"], acts.repeatRound, lifetime);
  const skipButton = button(["Skip to the next"], () => acts.show(now + 1), lifetime);
  const list = html("ol", { class: "script-parts" });
  const parts = group("Rounds", "script-rounds", [
    html("div", { class: "script-row" }, repeatButton, skipButton), list,
  ]);
  const el = html("div", { class: "script" },
    html("div", { class: "script-read" }, heading, speech, answers),
    html("div", { class: "script-do" },
      clocks, html("div", { class: "script-row" }, ...onward), markGroup, parts,
      makeSaving(acts.file, lifetime), makeRestart(acts.restart, lifetime)));
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
      ["Lesson", usedOfPlanned(sum(all, "used"), sum(all, "planned"))],
      ["This round", here?.round ? usedOfPlanned(here.used, here.planned) : ""],
      ["Timer", timer],
    ];
    replaceIfChanged(clocks, rows.filter(([, words]) => words), ([name, words]) =>
      html("div", {}, html("dt", {}, name), html("dd", {}, words)));
  }

  /** @param {View} view */
  function paintParts({ parts: all }) {
    replaceIfChanged(list, all.map(({ name }) => name), (name, index) => html("li", {}, html(
      "button", { "type": "button", "class": "kit-button", "data-part": index },
      html("span", {}, name), html("span", { class: "script-part-time" }),
      html("span", { class: "script-part-mark" }),
    )));
    for (const [index, hit] of list.querySelectorAll("button").entries()) {
      const { used, planned, mark } = all[index];
      const [, time, markWords] = hit.children;
      setText(time, used ? usedOfPlanned(used, planned) : planned ? inDigits(1000 * planned) : "");
      setText(markWords, wordsOf(mark));
      put(hit, { "aria-current": index === now ? "step" : null });
    }
  }

  return {
    el,
    reveal(shown) {
      answers.hidden = !shown;
    },
    paint(view) {
      now = view.now;
      const here = view.parts[now];
      const { tasks, place } = view;
      setText(heading, [view.heading, view.count].filter(Boolean).join(" \u00b7 "));
      paintClocks(view);
      paintParts(view);
      for (const [index, [mark]] of MARKS.entries()) {
        put(marks[index], { "aria-pressed": here?.mark === mark });
      }
      markGroup.hidden = !here?.round;
      repeatButton.hidden = !here?.round;
      put(skipButton, { "aria-disabled": now >= view.parts.length - 1 });
      onward[2].hidden = !here?.round;
      onward[3].hidden = !here?.round;
      const task = place?.extra ?? tasks[place?.task ?? 0];
      replaceIfChanged(speech, task ? [{ task, place, tasks }] : [], questionPart);
      replaceIfChanged(answers, task ? [{ task, place, tasks }] : [], answerPart);
    },
  };
}

/**
 * The question, or several that are asked together, and what to say.
 * @param {{ task: TaskInfo, place: View["place"], tasks: TaskInfo[] }} given
 * @returns {HTMLElement}
 */
function questionPart({ task, place, tasks }) {
  const number = `Question ${(place?.task ?? 0) + 1} of ${tasks.length}`;
  const together = place?.extra ? [task] : (place?.group ?? []).map((each) => tasks[each] ?? task);
  const prompts = new Set([task, ...together].map(({ prompt }) => prompt ?? ""));
  return html("div", {},
    html("p", { class: "script-quiet" }, place?.extra ? "Another question" : number),
    ...[...prompts].map((prompt) => html("p", { class: "script-prompt" }, prompt)),
    ...(task.say ? [html("p", { class: "script-speech" }, task.say)] : []));
}

/**
 * The hidden part: steps, answer, what wrong answers may mean, and all answers of the round.
 * @param {{ task: TaskInfo, place: View["place"], tasks: TaskInfo[] }} given
 * @returns {HTMLElement}
 */
function answerPart({ task, place, tasks }) {
  const steps = (task.steps ?? []).map((step, index) => html("li", {
    "aria-current": place?.phase === "show" && index === place.step - 1 ? "step" : null,
  }, step.say, ...(step.class ? [html("span", { class: "script-class" }, "Class: ", step.class)]
    : [])));
  const reasons = (task.mistakes ?? []).filter(({ teacher }) => teacher).map(
    ({ answer, teacher }) => html("li", {}, answer ? `${answer}: ` : "", teacher ?? ""),
  );
  const spokenToo = task.spoken && task.spoken !== task.answer ? ` (${task.spoken})` : "";
  return html("div", {},
    html("p", { class: "script-answer" }, html("span", { class: "script-quiet" }, "Answer "),
      `${task.answer ?? ""}${spokenToo}`),
    ...(steps.length ? [html("h3", {}, "Steps"), html("ol", {}, ...steps)] : []),
    ...(reasons.length ? [html("details", {},
      html("summary", {}, "What a wrong answer may mean"), html("ul", {}, ...reasons))] : []),
    html("h3", {}, "All answers of this round"),
    html("ol", { class: "script-answers" }, ...tasks.map(({ answer }, index) => html(
      "li", { "aria-current": index === (place?.task ?? 0) ? "step" : null }, answer ?? "",
    ))));
}

/**
 * A button that starts the lesson again after a confirmation.
 * @param {() => void} act
 * @param {{ signal: AbortSignal }} lifetime
 * @returns {HTMLElement}
 */
function makeRestart(act, lifetime) {
  const ask = button(["Start the lesson afresh"], () => setAsking(true), lifetime);
  const clear = button(["Clear it"], act, lifetime);
  const cancel = button(["Keep it"], () => setAsking(false), lifetime);
  const question = html("div", { class: "script-row" },
    html("p", {}, "This clears marks, times, answers and the pen."), clear, cancel);
  question.hidden = true;

  /** @param {boolean} asking */
  function setAsking(asking) {
    question.hidden = !asking;
    ask.hidden = asking;
    (asking ? cancel : ask).focus();
  }

  return html("div", { class: "script-fresh" }, ask, question);
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
 * Replace the children of an element when their data changed.
 * @template Item
 * @param {HTMLElement & { kitShown?: string }} el
 * @param {Item[]} items plain data
 * @param {(item: Item, index: number) => Node} make
 */
function replaceIfChanged(el, items, make) {
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
function setText(el, words) {
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
function usedOfPlanned(used, planned) {
  const taken = inDigits(used);
  return planned ? `${taken} of ${inDigits(1000 * planned)}` : taken;
}

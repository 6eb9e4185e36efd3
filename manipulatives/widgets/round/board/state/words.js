/** The words that stand in a round, to be shown, read aloud or announced. */
import { sharedWords } from "./shared_words.js";

/** @typedef {import("./board_state.js").BoardState} BoardState */

/**
 * What the question says; "" where the cards side by side say it all.
 * @param {BoardState} state
 * @returns {string}
 */
export function questionText({ position, questions }) {
  const { together, working, group } = position;
  return together && working
    ? sharedWords(group.map((each) => questions.tasks[each].prompt)).common
    : asked({ position, questions });
}

/**
 * Which of the questions it is.
 * @param {BoardState} state
 * @returns {string} "" where there is only one
 */
export function countText({ position, questions }) {
  const { place, extra, together, group } = position;
  if (place.phase === "wipe") {
    return "Count aloud";
  }
  if (extra) {
    return "task" in extra ? "Numbers of our own" : "Another like this";
  }
  const all = questions.tasks.length;
  if (all < 2) {
    return "";
  }
  return together ? `Questions ${group[0] + 1} to ${(group.at(-1) ?? 0) + 1} of ${all}`
    : `Question ${place.task + 1} of ${all}`;
}

/**
 * What is said to the question: to an answer, with a step, or its answer.
 * @param {BoardState} state
 * @returns {string | undefined}
 */
export function saidText({ position: { task, place }, questions: { counts }, work }) {
  const step = task?.steps[place.step - 1];
  return {
    ask: work.verdict?.say,
    work: work.verdict?.say,
    show: [step?.say, step?.class].filter(Boolean).join(" "),
    check: task?.spoken,
    wipe: counts[place.step - 1]?.toString(),
  }[place.phase];
}

/**
 * Everything that stands there, to be read aloud: what is asked with all its parts and all that
 * stand side by side, then what is said to it.
 * @param {BoardState} state
 * @returns {string}
 */
export function standingText(state) {
  const { position, questions } = state;
  const { together, working, group, task } = position;
  const prompts = together && working ? group.map((each) => questions.tasks[each].prompt)
    : [asked(state)];
  const parts = working ? task?.parts ?? [] : [];
  return [...prompts, ...parts, saidText(state)].filter(Boolean).join(" ");
}

/** @param {Pick<BoardState, "position" | "questions">} state */
function asked({ position: { place, task }, questions: { counts } }) {
  return place.phase === "wipe" ? `Count together in steps of ${counts[0]}.` : task?.prompt ?? "";
}

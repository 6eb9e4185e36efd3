/**
 * What is said to an answer: whether it meets the goal, and if not, what the first mistake that
 * was foreseen suggests to do next.
 *
 * @typedef {object} Verdict
 * @property {boolean} counts whether it was an answer at all
 * @property {boolean} right
 * @property {string} say one sentence
 * @property {string | null} rule the mistake that fits
 * @property {string | Facts | null} given the answer as it is compared, or the facts of the
 *   manipulative
 */
import { tidy } from "../../../shared/state/answers.js";
import { holds } from "../../../shared/state/predicate.js";

const NOTHING = "Write your answer first.";
const NOTHING_CHOSEN = "Choose an answer first.";
/** @type {Readonly<Record<string, string>>} */
const UNREADABLE = Object.freeze({
  time: "Write the hour, the two dots, then two digits.",
  number: "Write your answer in digits.",
  sum: "Write numbers with plus signs between them.",
});
/** What is said when no foreseen mistake fits. */
export const NOT_YET = "Not yet. Look again, or see the first step.";

/**
 * Judge what was typed, chosen or made.
 * @param {import("./task.js").Task} task
 * @param {Facts} facts what is true of the manipulative just now
 * @param {string} text what was typed or chosen; "" for none
 * @returns {Verdict}
 */
export function judge(task, facts, text) {
  const { by, form = "number" } = task.ask;
  const silent = { counts: false, right: false, rule: null, given: null };
  if (by !== "manipulative" && !text) {
    return { ...silent, say: by === "choice" ? NOTHING_CHOSEN : NOTHING };
  }
  const answer = by === "keypad" ? tidy(form, text) : by === "choice" ? text : null;
  if (by === "keypad" && answer === null) {
    return { ...silent, say: UNREADABLE[form] };
  }
  const known = { ...facts, answer };
  const given = answer ?? facts;
  if (holds(task.goal, known)) {
    return { counts: true, right: true, say: rightly(task.spoken), rule: null, given };
  }
  const mistake = task.mistakes.find(({ when }) => holds(when, known));
  return {
    counts: true, right: false, say: mistake?.pupil ?? NOT_YET, rule: mistake?.rule ?? null, given,
  };
}

/**
 * A right answer, said.
 * @param {string} spoken
 * @returns {string} such as "Yes, four thirty-five."
 */
export function rightly(spoken) {
  return `Yes, ${spoken}${spoken.endsWith(".") ? "" : "."}`;
}

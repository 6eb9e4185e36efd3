/**
 * What one pupil does with a round, alone: every task once, two tries each, hints from its worked
 * steps, and at the end a fresh twin of what was not solved. Plain data in, plain data out.
 *
 * @typedef {import("../../core/state/task.js").Task} Task
 * @typedef {import("../../core/state/judge.js").Verdict} Verdict
 * @typedef {"watch" | "offer" | "try" | "steps"} Stage an example to watch, a twin that is
 *   offered, the question, its worked steps
 *
 * @typedef {object} Item one question as it was met
 * @property {number} of which task of the round
 * @property {number | null} twin which of its twins is asked in its place
 * @property {Stage} stage
 * @property {string} text what is typed or chosen, not checked yet
 * @property {Record<string, any> | null} own the traits of the manipulative as the pupil left them
 * @property {number} hints how many steps were shown as hints
 * @property {boolean} peek whether the manipulative shows a hint just now
 * @property {number} step how many steps are shown
 * @property {Verdict["given"][]} given every answer, in order
 * @property {boolean} right
 * @property {string | null} rule the last mistake that was foreseen
 * @property {string} say what was said last
 */
import { alike } from "../../../shared/state/alike.js";
import { NOT_YET } from "../../core/state/judge.js";

/** After so many wrong answers the steps are shown. */
export const TRIES = 2;

const HINT = "Not yet. Look again, or take a hint.";
const STEPS = "Not yet. The steps will help.";

/**
 * The question of an item.
 * @param {Task[]} tasks
 * @param {Item} item
 * @returns {Task}
 */
export function questionOf(tasks, { of, twin }) {
  return (twin === null ? undefined : tasks[of].twins?.[twin]) ?? tasks[of];
}

/**
 * A question that can be worked before a task is asked: a twin whose answer is another one, given
 * in the same way. Where one of few answers is chosen, all twins may have the same.
 * @param {Task[]} tasks
 * @param {number} of which task
 * @returns {Task | null}
 */
export function exampleOf(tasks, of) {
  const { answer, ask } = tasks[of];
  const twins = [tasks[of], ...tasks].flatMap((task) => task.twins ?? [])
    .filter((twin) => answerFormOf(twin) === answerFormOf({ ask }));
  const last = ask.by === "choice" ? twins[0] : undefined;
  return twins.find((twin) => twin.answer !== answer) ?? last ?? null;
}

/**
 * How a question is answered.
 * @param {{ ask: import("../../core/state/task.js").Ask }} task
 * @returns {string}
 */
function answerFormOf({ ask: { by, form = "" } }) {
  return `${by} ${form}`;
}

/**
 * The items of a round that begins. What is answered in a form not met before opens with an
 * example.
 * @param {Task[]} tasks
 * @returns {Item[]}
 */
export function itemsOf(tasks) {
  /** @type {string[]} */
  const met = [];
  return tasks.map((task, of) => {
    const opens = !met.includes(answerFormOf(task)) && exampleOf(tasks, of) !== null;
    met.push(answerFormOf(task));
    return newItem(of, null, opens ? "watch" : "try");
  });
}

/**
 * @param {number} of
 * @param {number | null} twin
 * @param {Stage} stage
 * @returns {Item}
 */
function newItem(of, twin, stage) {
  return {
    of, twin, stage, text: "", own: null, hints: 0, peek: false, step: 0, given: [], right: false,
    rule: null, say: "",
  };
}

/**
 * The twins that are offered when every task was met: one for each that was not solved.
 * @param {Item[]} items
 * @param {Task[]} tasks
 * @returns {Item[]}
 */
export function offered(items, tasks) {
  return items.filter(({ twin, right }) => twin === null && !right).flatMap(({ of }) => {
    const { length } = tasks[of].twins ?? [];
    // The first may have been the example; the last was not seen yet.
    return length ? [newItem(of, length - 1, "offer")] : [];
  });
}

/**
 * Whether nothing is left to do with an item.
 * @param {Item} item
 * @param {Task} task
 * @returns {boolean}
 */
export function isDone({ right, stage, step }, { steps }) {
  return right || (stage === "steps" && step >= steps.length);
}

/**
 * Whether all tries were used up.
 * @param {Item} item
 * @returns {boolean}
 */
export function isSpent({ right, given }) {
  return !right && given.length >= TRIES;
}

/**
 * The item with an answer written down. What is no answer is no try, and neither is a
 * manipulative that was not moved since the last one.
 * @param {Item} item
 * @param {Task} task
 * @param {Verdict} verdict
 * @returns {Item}
 */
export function answered(item, task, { counts, right, say, rule, given }) {
  if (!counts) {
    return { ...item, say };
  }
  const short = typeof given === "string" ? given : goalFacts(task.goal, given ?? {});
  const again = typeof given !== "string" && alike(item.given.at(-1) ?? null, short);
  const all = again && !right ? item.given : [...item.given, short];
  return {
    ...item,
    say: say !== NOT_YET ? say : all.length < TRIES ? HINT : STEPS,
    right,
    // The next digit begins a new answer.
    text: right ? item.text : "",
    given: all,
    rule: rule ?? item.rule,
  };
}

/**
 * The item with one more hint. The last step would give the answer: then all steps are shown, as
 * after two tries.
 * @param {Item} item
 * @param {Task} task
 * @returns {Item}
 */
export function hinted(item, { ask, steps }) {
  const hints = item.hints + 1;
  if (hints >= steps.length) {
    return { ...item, hints, peek: false, stage: "steps", step: 1 };
  }
  // What the pupil made stays; where it is only looked at, the hint is shown in it.
  return ask.by === "manipulative" ? { ...item, hints, peek: true }
    : { ...item, hints, own: null };
}

/**
 * Those facts of a manipulative that a goal speaks of: they are the answer that was made.
 * @param {any} goal
 * @param {Facts} facts
 * @returns {Facts}
 */
export function goalFacts(goal, facts) {
  const [word, ...rest] = goal;
  if (["and", "or", "not"].includes(word)) {
    return Object.assign({}, ...rest.map((/** @type {any} */ part) => goalFacts(part, facts)));
  }
  return { [rest[0]]: facts[rest[0]] ?? null };
}

/**
 * The saved items of a round, if they are about these tasks.
 * @param {any} saved
 * @param {Task[]} tasks
 * @returns {Item[] | null}
 */
export function itemsIn(saved, tasks) {
  const items = Array.isArray(saved) ? saved : [];
  const fine = items.every((item, index) => (
    isItem(item, tasks) && (index >= tasks.length || (item.of === index && item.twin === null))
  ));
  return fine && items.length >= tasks.length && items.length > 0 ? items : null;
}

/**
 * @param {any} item
 * @param {Task[]} tasks
 * @returns {item is Item}
 */
function isItem(item, tasks) {
  const task = tasks[item?.of];
  const twin = item?.twin;
  return Boolean(task) && (twin === null || Boolean(task.twins?.[twin])) &&
    ["watch", "offer", "try", "steps"].includes(item.stage) && Array.isArray(item.given) &&
    typeof item.text === "string" && typeof item.say === "string" &&
    typeof item.right === "boolean" && Number.isInteger(item.hints) && Number.isInteger(item.step);
}

/**
 * What a teacher is handed of an item: null as long as nothing was tried.
 * @param {Item} item
 * @param {Task} task
 * @param {{ skill: string, options: object }} setup of the round
 * @returns {Result | null}
 */
export function resultOf(
  { given, hints, right, rule, twin }, { prompt, start, goal, answer }, { skill, options },
) {
  return given.length || hints ? {
    skill, options, prompt, asked: { start, goal, answer }, given, tries: given.length, right, rule,
    hints, twin: twin !== null,
  } : null;
}

/**
 * @typedef {object} Result
 * @property {string} skill
 * @property {object} options those that the round set for the skill
 * @property {string} prompt
 * @property {{ start: object, goal: object, answer: string }} asked how the task began, what
 *   solves it, and its answer
 * @property {Verdict["given"][]} given
 * @property {number} tries
 * @property {boolean} right
 * @property {string | null} rule
 * @property {number} hints
 * @property {boolean} twin
 */

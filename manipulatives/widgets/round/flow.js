/**
 * Where a round stands and where a press leads: for each task ask, work, show step by step, check;
 * at the end, where the class counts aloud, wipe. Where several tasks are asked side by side they
 * are asked and worked on together, then shown and checked one after the other. Plain data in,
 * plain data out; nothing here knows of a screen.
 *
 * @typedef {"ask" | "work" | "show" | "check" | "wipe"} Phase
 * @typedef {object} Place
 * @property {number} task
 * @property {number} step how many steps are shown; in wipe, how many numbers were counted
 * @property {Phase} phase
 * @property {number} [aside] which of the questions beside the round is asked in its place
 * @typedef {{ place: Place, trail: Place[] }} Way where we are, and how we came here
 * @typedef {{ say: string, class: string, show: Record<string, any>, answer?: string }} Step
 * @typedef {{ rule: string, when: any, answer: string | null, pupil: string }} Mistake
 * @typedef {{ by: string, form?: string, choices?: string[] }} Ask
 * @typedef {object} Task
 * @property {string} prompt
 * @property {string[]} [parts] short orders, one after the other
 * @property {Ask} ask
 * @property {any} goal
 * @property {string} answer
 * @property {string} spoken
 * @property {Record<string, any>} start
 * @property {Step[]} steps
 * @property {Mistake[]} mistakes
 * @property {Task[]} [twins] others like it
 * @typedef {{ tasks: Task[], together: number, count: number }} Course what a round leads through:
 *   its tasks, how many of them are asked side by side, and how many numbers are counted at its
 *   end, 0 for none
 * @typedef {"start" | "first" | "step" | "answer" | "item" | "question" | "wipe" | "count" |
 *   "home" | "end"} Turn
 */
import { groupOf } from "./group.js";

// A lesson of forty tasks with ten steps each can be walked back to its beginning.
const LONGEST = 500;

/**
 * A place that the round really has, as near as can be to one that came from elsewhere.
 * @param {any} place
 * @param {Course} course
 * @returns {Place}
 */
export function placeIn(place, { tasks, count }) {
  const task = within(place?.task, tasks.length - 1);
  const steps = tasks[task]?.steps.length ?? 0;
  switch (place?.phase) {
    case "show":
      return steps ? { task, step: Math.max(1, within(place.step, steps)), phase: "show" }
        : { task, step: 0, phase: "work" };
    case "check":
      return { task, step: steps, phase: "check" };
    case "work":
      return { task, step: 0, phase: "work" };
    case "wipe":
      return count
        ? { task: Math.max(0, tasks.length - 1), step: within(place.step, count), phase: "wipe" }
        : { task, step: steps, phase: "check" };
    default:
      return { task, step: 0, phase: "ask" };
  }
}

/**
 * Where one press leads, or null at the end of the round.
 * @param {Place} place
 * @param {Course} course
 * @param {{ waiting: boolean, solved: boolean, open?: number[], straight?: boolean }} now whether
 *   the timer waits to be started; whether the task is answered rightly, so that it need not be
 *   shown; which answers were revealed; and whether this one was without its steps, so that the
 *   next one is too
 * @returns {Place | null}
 */
export function after(place, course, { waiting, solved, open = [], straight = false }) {
  const { tasks, count } = course;
  const { task, step, phase } = place;
  if (phase === "wipe") {
    return step < count ? { task, step: step + 1, phase } : null;
  }
  if (phase === "ask" && waiting) {
    return { task, step: 0, phase: "work" };
  }
  const group = groupOf(task, course);
  const ahead = [...group.filter((one) => one > task), ...group.filter((one) => one < task)];
  const closed = ahead.filter((one) => !open.includes(one));
  if (phase === "check" || (phase === "work" && solved)) {
    return closed.length ? opened(closed[0], tasks, straight) : beyond(group, course);
  }
  if (phase !== "show" && open.includes(task) && closed.length) {
    return opened(closed[0], tasks, false);
  }
  return onward(place, tasks[task]?.steps.length ?? 0);
}

/**
 * Where one press leads within a question beside the round, or null at its end.
 * @param {Place} place
 * @param {number} steps how many steps it has
 * @param {boolean} solved
 * @returns {Place | null}
 */
export function afterAside(place, steps, solved) {
  const done = place.phase === "check" || (solved && place.phase !== "show");
  return done ? null : { ...onward(place, steps), aside: place.aside };
}

/**
 * What that press does, for the words on its button.
 * @param {Place} place
 * @param {Place | null} next
 * @returns {Turn}
 */
export function turn(place, next) {
  if (!next) {
    return "end";
  }
  if (next.phase === "wipe") {
    return place.phase === "wipe" ? "count" : "wipe";
  }
  if (next.aside !== place.aside) {
    return "home";
  }
  if (next.task !== place.task) {
    return next.phase === "ask" ? "question" : next.phase === "check" ? "answer" : "item";
  }
  if (next.phase === "show") {
    return next.step === 1 ? "first" : "step";
  }
  return next.phase === "work" ? "start" : "answer";
}

/**
 * One press on.
 * @param {Way} way
 * @param {Place | null} next
 * @returns {Way | null} null at the end of the round
 */
export function goOn({ place, trail }, next) {
  return next && { place: next, trail: [...trail, place].slice(-LONGEST) };
}

/**
 * One press back: to where we came from, or, when that is not known, to what stands before.
 * @param {Way} way
 * @param {Course} course
 * @returns {Way | null} null at the beginning of the round
 */
export function goBack({ place, trail }, course) {
  if (trail.length) {
    return { place: trail[trail.length - 1], trail: trail.slice(0, -1) };
  }
  const before = precede(place, course);
  return before && { place: before, trail: [] };
}

/**
 * From a question beside the round back to where it was left.
 * @param {Way} way
 * @returns {Way}
 */
export function goHome(way) {
  const { place: { task, aside }, trail } = way;
  if (aside === undefined) {
    return way;
  }
  const home = trail.map((each) => each.aside === undefined).lastIndexOf(true);
  return home < 0 ? { place: { task, step: 0, phase: "ask" }, trail: [] }
    : { place: trail[home], trail: trail.slice(0, home) };
}

/**
 * Show the answer at once; once more, and it is hidden again where we were.
 * @param {Way} way
 * @param {Course} course
 * @param {number} steps how many steps the question has
 * @returns {Way | null} null where there is no answer to show
 */
export function turnAnswer(way, course, steps) {
  const { place, trail } = way;
  if (place.phase === "wipe") {
    return null;
  }
  if (place.phase !== "check") {
    return goOn(way, { ...place, step: steps, phase: "check" });
  }
  const back = goBack(way, course);
  // A place that was set from outside was not reached from its own question.
  return back?.place.task === place.task && back.place.aside === place.aside ? back
    : { place: { ...place, step: 0, phase: "work" }, trail };
}

/**
 * What the manipulative is set to at a place: what holds for the round, what the task starts
 * from, and what each step shown so far has changed. Its buttons make room for what is shown.
 * @param {Task} task
 * @param {Record<string, any>} base
 * @param {Place} place
 * @returns {Record<string, any>}
 */
export function traitsAt({ start, steps }, base, { step, phase }) {
  const begun = { ...base, ...start };
  if ((phase === "show" || phase === "check") && "buttons" in begun) {
    begun.buttons = false;
  }
  return Object.assign(begun, ...steps.slice(0, step).map(({ show }) => show));
}

/**
 * Every trait of the manipulative that the round ever sets.
 * @param {Task[]} tasks
 * @param {Record<string, any>} base
 * @returns {string[]}
 */
export function traitNames(tasks, base) {
  const tables = tasks.flatMap(({ start, steps }) => [start, ...steps.map(({ show }) => show)]);
  return [...new Set([base, ...tables].flatMap((table) => Object.keys(table)))];
}

/**
 * @param {Place} place
 * @param {number} steps
 * @returns {Place}
 */
function onward({ task, step, phase }, steps) {
  return step < steps && phase !== "check" ? { task, step: step + 1, phase: "show" }
    : { task, step: steps, phase: "check" };
}

/**
 * The next of several that stand side by side.
 * @param {number} task
 * @param {Task[]} tasks
 * @param {boolean} straight
 * @returns {Place}
 */
export function opened(task, tasks, straight) {
  const { length } = tasks[task].steps;
  return onward({ task, step: straight ? length : 0, phase: "work" }, length);
}

/**
 * @param {number[]} group
 * @param {Course} course
 * @returns {Place | null} what comes after a group
 */
function beyond(group, { tasks, count }) {
  const next = (group.at(-1) ?? 0) + 1;
  if (next < tasks.length) {
    return { task: next, step: 0, phase: "ask" };
  }
  return count ? { task: Math.max(0, tasks.length - 1), step: 0, phase: "wipe" } : null;
}

/**
 * @param {Place} place
 * @param {Course} course
 * @returns {Place | null}
 */
function precede({ task, step, phase }, course) {
  if (phase === "wipe") {
    return step > 0 ? { task, step: step - 1, phase } : placeIn({ task, phase: "check" }, course);
  }
  if (step > 0) {
    return phase === "check" ? { task, step, phase: "show" }
      : { task, step: step - 1, phase: step > 1 ? "show" : "work" };
  }
  if (phase === "check") {
    return { task, step: 0, phase: "work" };
  }
  const [first = 0] = groupOf(task, course);
  return first > 0 ? placeIn({ task: first - 1, phase: "check" }, course) : null;
}

/**
 * @param {any} value
 * @param {number} most
 * @returns {number}
 */
function within(value, most) {
  return Number.isInteger(value) ? Math.max(0, Math.min(value, most)) : 0;
}

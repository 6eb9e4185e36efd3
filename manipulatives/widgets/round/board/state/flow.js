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
 * @property {number} [extra] which of the extra questions is asked in its place
 * @typedef {{ place: Place, trail: Place[] }} Route where we are, and how we came here
 * @typedef {import("../../core/state/task.js").Task} Task
 * @typedef {{ tasks: Task[], together: number, count: number }} Course what a round leads through:
 *   its tasks, how many of them are asked side by side, and how many numbers are counted at its
 *   end, 0 for none
 * @typedef {"start" | "first" | "step" | "answer" | "item" | "question" | "wipe" | "count" |
 *   "home" | "end"} Turn
 */
import { groupOf } from "./group.js";

// A lesson of forty tasks with ten steps each can be walked back to its beginning.
const MOST_PLACES = 500;

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
 * Where one press leads within an extra question, or null at its end.
 * @param {Place} place
 * @param {number} steps how many steps it has
 * @param {boolean} solved
 * @returns {Place | null}
 */
export function afterExtra(place, steps, solved) {
  const done = place.phase === "check" || (solved && place.phase !== "show");
  return done ? null : { ...onward(place, steps), extra: place.extra };
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
  if (next.extra !== place.extra) {
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
 * @param {Route} route
 * @param {Place | null} next
 * @returns {Route | null} null at the end of the round
 */
export function goOn({ place, trail }, next) {
  return next && { place: next, trail: [...trail, place].slice(-MOST_PLACES) };
}

/**
 * One press back: to where we came from, or, when that is not known, to what stands before.
 * @param {Route} route
 * @param {Course} course
 * @returns {Route | null} null at the beginning of the round
 */
export function goBack({ place, trail }, course) {
  if (trail.length) {
    return { place: trail[trail.length - 1], trail: trail.slice(0, -1) };
  }
  const before = precede(place, course);
  return before && { place: before, trail: [] };
}

/**
 * From an extra question back to where it was left.
 * @param {Route} route
 * @returns {Route}
 */
export function goHome(route) {
  const { place: { task, extra }, trail } = route;
  if (extra === undefined) {
    return route;
  }
  const home = trail.map((each) => each.extra === undefined).lastIndexOf(true);
  return home < 0 ? { place: { task, step: 0, phase: "ask" }, trail: [] }
    : { place: trail[home], trail: trail.slice(0, home) };
}

/**
 * Show the answer at once; once more, and it is hidden again where we were.
 * @param {Route} route
 * @param {Course} course
 * @param {number} steps how many steps the question has
 * @returns {Route | null} null where there is no answer to show
 */
export function turnAnswer(route, course, steps) {
  const { place, trail } = route;
  if (place.phase === "wipe") {
    return null;
  }
  if (place.phase !== "check") {
    return goOn(route, { ...place, step: steps, phase: "check" });
  }
  const back = goBack(route, course);
  // A place that was set from outside was not reached from its own question.
  return back?.place.task === place.task && back.place.extra === place.extra ? back
    : { place: { ...place, step: 0, phase: "work" }, trail };
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

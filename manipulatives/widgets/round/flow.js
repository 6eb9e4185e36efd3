/**
 * Where a round stands and where a press leads: for each task ask, work, show step by step, check.
 * Plain data in, plain data out; nothing here knows of a screen.
 *
 * @typedef {"ask" | "work" | "show" | "check"} Phase
 * @typedef {{ task: number, step: number, phase: Phase }} Place step: how many steps are shown
 * @typedef {{ place: Place, trail: Place[] }} Way where we are, and how we came here
 * @typedef {{ say: string, class: string, show: Record<string, any>, answer?: string }} Step
 * @typedef {{ rule: string, when: any, answer: string | null, pupil: string }} Mistake
 * @typedef {{ by: string, form?: string, choices?: string[] }} Ask
 * @typedef {{
 *   prompt: string, ask: Ask, goal: any, answer: string, spoken: string,
 *   start: Record<string, any>, steps: Step[], mistakes: Mistake[],
 * }} Task
 * @typedef {"start" | "first" | "step" | "answer" | "question" | "end"} Turn
 */

// A lesson of forty tasks with ten steps each can be walked back to its beginning.
const LONGEST = 500;

/**
 * A place that the round really has, as near as can be to one that came from elsewhere.
 * @param {any} place
 * @param {Task[]} tasks
 * @returns {Place}
 */
export function placeIn(place, tasks) {
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
    default:
      return { task, step: 0, phase: "ask" };
  }
}

/**
 * Where one press leads, or null at the end of the round.
 * @param {Place} place
 * @param {Task[]} tasks
 * @param {{ waiting: boolean, solved: boolean }} now whether the timer waits to be started, and
 *   whether the task is answered rightly, so that it need not be shown
 * @returns {Place | null}
 */
export function after({ task, step, phase }, tasks, { waiting, solved }) {
  const steps = tasks[task]?.steps.length ?? 0;
  if (phase === "ask" && waiting) {
    return { task, step: 0, phase: "work" };
  }
  if (phase === "check" || (phase === "work" && solved)) {
    return task + 1 < tasks.length ? { task: task + 1, step: 0, phase: "ask" } : null;
  }
  return step < steps ? { task, step: step + 1, phase: "show" }
    : { task, step: steps, phase: "check" };
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
  if (next.task !== place.task) {
    return "question";
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
 * @param {Task[]} tasks
 * @returns {Way | null} null at the beginning of the round
 */
export function goBack({ place, trail }, tasks) {
  if (trail.length) {
    return { place: trail[trail.length - 1], trail: trail.slice(0, -1) };
  }
  const before = precede(place, tasks);
  return before && { place: before, trail: [] };
}

/**
 * Show the answer at once; once more, and it is hidden again where we were.
 * @param {Way} way
 * @param {Task[]} tasks
 * @returns {Way}
 */
export function turnAnswer(way, tasks) {
  const { place } = way;
  if (place.phase !== "check") {
    const next = placeIn({ task: place.task, phase: "check" }, tasks);
    return /** @type {Way} */ (goOn(way, next));
  }
  const back = goBack(way, tasks);
  // A place that was set from outside was not reached from its own question.
  return back?.place.task === place.task ? back
    : { place: { task: place.task, step: 0, phase: "work" }, trail: way.trail };
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
 * @param {Task[]} tasks
 * @returns {Place | null}
 */
function precede({ task, step, phase }, tasks) {
  if (step > 0) {
    return phase === "check" ? { task, step, phase: "show" }
      : { task, step: step - 1, phase: step > 1 ? "show" : "work" };
  }
  if (phase === "check") {
    return { task, step: 0, phase: "work" };
  }
  return task > 0 ? placeIn({ task: task - 1, phase: "check" }, tasks) : null;
}

/**
 * @param {any} value
 * @param {number} most
 * @returns {number}
 */
function within(value, most) {
  return Number.isInteger(value) ? Math.max(0, Math.min(value, most)) : 0;
}

/**
 * Extra questions: another like one of the round, from the twins that were made beforehand, or one
 * with numbers that a teacher typed. An extra question is asked in the place of a task; nothing of
 * the round changes by it.
 *
 * @typedef {import("../../core/state/task.js").Task} Task
 * @typedef {{ of: number, twin: number }} TwinExtra the twin of a task of the round
 * @typedef {{ of: number, task: Task }} TypedExtra one made for numbers of a teacher's own
 * @typedef {TwinExtra | TypedExtra} Extra
 */

/**
 * The task that an extra question asks.
 * @param {Extra | undefined} extra
 * @param {Task[]} tasks
 * @returns {Task | undefined}
 */
export function taskOf(extra, tasks) {
  if (typeof extra !== "object" || !extra) {
    return undefined;
  }
  return "task" in extra ? extra.task : tasks[extra.of]?.twins?.[extra.twin];
}

/**
 * The next twin of a task; after the last the first comes again.
 * @param {number} of which task
 * @param {Task[]} tasks
 * @param {Extra[]} before every extra question so far
 * @returns {TwinExtra | null} null when it has none
 */
export function nextTwin(of, tasks, before) {
  const twins = tasks[of]?.twins?.length ?? 0;
  const had = before.filter((each) => each.of === of && "twin" in each).length;
  return twins ? { of, twin: had % twins } : null;
}

/**
 * The saved extra questions, as far as they can be used.
 * @param {any} saved
 * @param {Task[]} tasks
 * @returns {Extra[]}
 */
export function extrasIn(saved, tasks) {
  const list = Array.isArray(saved) ? saved : [];
  // Places name them by number, so behind one that cannot be used none is what it was.
  const broken = list.findIndex((each) => !isTask(taskOf(each, tasks)));
  return broken < 0 ? list : list.slice(0, broken);
}

/**
 * Whether it has everything that a task is shown with.
 * @param {any} task
 * @returns {task is Task}
 */
export function isTask(task) {
  const texts = [task?.prompt, task?.answer, task?.spoken];
  return texts.every((text) => typeof text === "string") && Array.isArray(task.steps) &&
    Array.isArray(task.mistakes) && typeof task.ask?.by === "string";
}

/**
 * Questions beside the round: another like one of its own, from the twins that were made
 * beforehand, or one with numbers that a teacher typed. They are asked in the place of a task, and
 * nothing of the round changes by them.
 *
 * @typedef {import("./flow.js").Task} Task
 * @typedef {{ of: number, twin: number }} TwinAside the twin of a task of the round
 * @typedef {{ of: number, task: Task }} TypedAside one that was made for numbers of a teacher's own
 * @typedef {TwinAside | TypedAside} Aside
 */

/**
 * The question itself.
 * @param {Aside | undefined} aside
 * @param {Task[]} tasks
 * @returns {Task | undefined}
 */
export function asked(aside, tasks) {
  if (typeof aside !== "object" || !aside) {
    return undefined;
  }
  return "task" in aside ? aside.task : tasks[aside.of]?.twins?.[aside.twin];
}

/**
 * The next twin of a task; after the last the first comes again.
 * @param {number} of which task
 * @param {Task[]} tasks
 * @param {Aside[]} before every question that was asked beside the round
 * @returns {TwinAside | null} null when it has none
 */
export function nextTwin(of, tasks, before) {
  const twins = tasks[of]?.twins?.length ?? 0;
  const had = before.filter((each) => each.of === of && "twin" in each).length;
  return twins ? { of, twin: had % twins } : null;
}

/**
 * What was kept of them, as far as it can be used.
 * @param {any} kept
 * @param {Task[]} tasks
 * @returns {Aside[]}
 */
export function asidesOf(kept, tasks) {
  const list = Array.isArray(kept) ? kept : [];
  // What stands in one place is found there: one that will do nothing more spoils all after it.
  const spoilt = list.findIndex((each) => !isQuestion(asked(each, tasks)));
  return spoilt < 0 ? list : list.slice(0, spoilt);
}

/**
 * Whether it has what a question is shown with.
 * @param {any} task
 * @returns {task is Task}
 */
export function isQuestion(task) {
  const texts = [task?.prompt, task?.answer, task?.spoken];
  return texts.every((text) => typeof text === "string") && Array.isArray(task.steps) &&
    Array.isArray(task.mistakes) && typeof task.ask?.by === "string";
}

/** Tasks that are asked together, side by side. */

/** What each of them is called on a board. */
export const LETTERS = Object.freeze(["a", "b", "c", "d"]);

/**
 * The tasks that stand beside a task, itself among them, in order.
 * @param {number} task
 * @param {{ tasks: unknown[], together: number }} course
 * @returns {number[]}
 */
export function groupOf(task, { tasks, together }) {
  const first = task - (task % together);
  return tasks.slice(first, first + together).map((_, index) => first + index);
}

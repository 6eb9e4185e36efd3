/** Tasks that are asked together, side by side. */

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

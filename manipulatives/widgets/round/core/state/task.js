/**
 * A task as plain data, and what it does to its manipulative.
 *
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
 */

/**
 * The traits of the manipulative after some steps: what holds for the round, what the task starts
 * from, and what each step shown so far has changed. Its buttons make room for what is shown.
 * @param {Task} task
 * @param {Record<string, any>} base
 * @param {{ step: number, phase: string }} place how many steps are shown, and in which phase
 * @returns {Record<string, any>}
 */
export function traitsAt({ start, steps }, base, { step, phase }) {
  const traits = { ...base, ...start };
  if ((phase === "show" || phase === "check") && "buttons" in traits) {
    traits.buttons = false;
  }
  return Object.assign(traits, ...steps.slice(0, step).map(({ show }) => show));
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

/**
 * What is saved of a round, and what of it can still be used. It may be old, cut short or somebody
 * else's: everything is checked.
 */
import { timerOf } from "../../core/state/timer.js";
import { extrasIn, taskOf } from "./extra.js";
import { placeIn } from "./flow.js";

/**
 * @typedef {object} Saved
 * @property {import("./flow.js").Route} route
 * @property {import("./extra.js").Extra[]} extras
 * @property {number[]} revealed
 * @property {Record<string, import("./answers.js").Work>} works
 * @property {import("./answers.js").Answer[]} answers
 * @property {import("../../core/state/timer.js").Timer} timer
 * @property {boolean} running
 */

/**
 * A round as plain data for the storage.
 * @param {Saved} round
 * @param {string} fingerprint of its questions and its time
 * @param {import("./preferences.js").Preferences} preferences
 * @returns {object}
 */
export function dataOf({ route, revealed, ...rest }, fingerprint, preferences) {
  return { for: fingerprint, ...route, open: revealed, ...rest, preferences };
}

/**
 * The round that was saved.
 * @param {any} data
 * @param {string} fingerprint that it has to have
 * @param {import("./flow.js").Course} course
 * @returns {Saved | null} null when it is of no use: a round made anew under the same key has other
 *   questions
 */
export function savedIn(data, fingerprint, course) {
  const timer = timerOf(data?.timer);
  if (data?.for !== fingerprint || !timer || !Array.isArray(data.trail)) {
    return null;
  }
  const { tasks } = course;
  const extras = extrasIn(data.extras, tasks);
  const works = Object.entries(data.works ?? {}).filter(([, work]) => (
    typeof work?.text === "string"
  ));

  /**
   * @param {any} place
   * @returns {import("./flow.js").Place}
   */
  function placeOf(place) {
    const question = taskOf(extras[place?.extra], tasks);
    if (!question) {
      return placeIn(place, course);
    }
    const { task } = placeIn({ task: place.task }, course);
    const alone = { tasks: [question], together: 1, count: 0 };
    return { ...placeIn({ ...place, task: 0 }, alone), task, extra: place.extra };
  }

  return {
    route: { place: placeOf(data.place), trail: data.trail.map(placeOf) },
    extras,
    revealed: [...tasks.keys()].filter((task) => (
      Array.isArray(data.open) && data.open.includes(task)
    )),
    works: Object.fromEntries(works),
    answers: Array.isArray(data.answers) ? data.answers : [],
    timer,
    running: data.running === true,
  };
}

/**
 * What the browser kept of a round, as far as it can still be used. It may be old, cut short or
 * somebody else's: nothing of it is taken on trust.
 *
 * @typedef {{ apart: boolean, tone: boolean, beat: number }} Taste what the teacher likes: one
 *   question at a time even so, a tone when time is up, and how many counts a minute
 * @typedef {{ text: string, verdict: import("./judge.js").Verdict | null, own: any }} Work
 *   what a pupil typed or chose, what was said to it, and how the manipulative was left
 */
import { asidesOf, asked } from "./aside.js";
import { placeIn } from "./flow.js";
import { timerOf } from "./timer.js";

/** What holds until somebody likes it otherwise.
 * @type {Readonly<Taste>}
 */
export const USUAL = Object.freeze({ apart: false, tone: false, beat: 60 });

/**
 * What a teacher liked.
 * @param {any} kept
 * @returns {Taste}
 */
export function tasteOf(kept) {
  const { apart, tone, beat } = kept ?? {};
  const fine = Number.isInteger(beat) && beat > 0;
  return { apart: apart === true, tone: tone === true, beat: fine ? beat : USUAL.beat };
}

/**
 * @param {any} kept
 * @param {string} mark of the questions that it has to be about
 * @param {import("./flow.js").Course} course
 * @returns {{
 *   way: import("./flow.js").Way, asides: import("./aside.js").Aside[], open: number[],
 *   works: Record<string, Work>, answers: any[], timer: import("./timer.js").Timer,
 *   running: boolean,
 * } | null} null when it is of no use: a round made anew under the same key has other questions
 */
export function restored(kept, mark, course) {
  const timer = timerOf(kept?.timer);
  if (kept?.for !== mark || !timer || !Array.isArray(kept.trail)) {
    return null;
  }
  const { tasks } = course;
  const asides = asidesOf(kept.asides, tasks);
  const works = Object.entries(kept.works ?? {}).filter(([, work]) => (
    typeof work?.text === "string"
  ));

  /**
   * @param {any} place
   * @returns {import("./flow.js").Place}
   */
  function stood(place) {
    const beside = asked(asides[place?.aside], tasks);
    if (!beside) {
      return placeIn(place, course);
    }
    const { task } = placeIn({ task: place.task }, course);
    const alone = { tasks: [beside], together: 1, count: 0 };
    return { ...placeIn({ ...place, task: 0 }, alone), task, aside: place.aside };
  }

  return {
    way: { place: stood(kept.place), trail: kept.trail.map(stood) },
    asides,
    open: [...tasks.keys()].filter((task) => Array.isArray(kept.open) && kept.open.includes(task)),
    works: Object.fromEntries(works),
    answers: Array.isArray(kept.answers) ? kept.answers : [],
    timer,
    running: kept.running === true,
  };
}

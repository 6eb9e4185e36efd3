/**
 * What a teacher prefers in a round.
 *
 * @typedef {{ apart: boolean, tone: boolean, beat: number }} Preferences one question at a time
 *   even where several could be asked; a tone when time is up; and how many counts a minute
 */

/** What holds until a teacher chooses otherwise.
 * @type {Readonly<Preferences>}
 */
export const USUAL = Object.freeze({ apart: false, tone: false, beat: 60 });

/**
 * The preferences that were saved, as far as they can be used.
 * @param {any} saved
 * @returns {Preferences}
 */
export function preferencesIn(saved) {
  const { apart, tone, beat } = saved ?? {};
  const fine = Number.isInteger(beat) && beat > 0;
  return { apart: apart === true, tone: tone === true, beat: fine ? beat : USUAL.beat };
}

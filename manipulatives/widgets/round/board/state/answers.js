/**
 * What was typed, chosen and made for each question, and what was answered.
 *
 * @typedef {import("./flow.js").Place} Place
 * @typedef {import("../../core/state/judge.js").Verdict} Verdict
 * @typedef {{ text: string, verdict: Verdict | null, own: any }} Work
 *   what a pupil typed or chose, what was said to it, and how the manipulative was left
 *
 * @typedef {object} Answer
 * @property {number} task
 * @property {string | Facts | null} given
 * @property {number} tries
 * @property {boolean} right
 * @property {string | null} rule
 */

/** @type {Readonly<Work>} */
const NO_WORK = Object.freeze({ text: "", verdict: null, own: null });

/** The work on every question of a round; right and wrong answers go into its model. */
export class Answers {
  /** @type {Record<string, Work>} */
  #works = {};

  #model;

  /** @param {WidgetModel} model of the round */
  constructor(model) {
    this.#model = model;
  }

  /** @returns {Record<string, Work>} everything, for saving */
  get works() {
    return this.#works;
  }

  /** @returns {Answer[]} */
  get given() {
    return this.#model.get("answers");
  }

  /**
   * @param {Place} place
   * @returns {Work}
   */
  at(place) {
    return this.#works[keyOf(place)] ?? NO_WORK;
  }

  /**
   * Whether the question was answered rightly, whoever answered it.
   * @param {Place} place
   * @returns {boolean}
   */
  solved(place) {
    return place.extra === undefined
      ? this.given.some(({ right, task }) => right && task === place.task)
      : this.at(place).verdict?.right === true;
  }

  /**
   * @param {Place} place
   * @param {Partial<Work>} part
   * @returns {void}
   */
  note(place, part) {
    this.#works = { ...this.#works, [keyOf(place)]: { ...this.at(place), ...part } };
  }

  /**
   * An answer was judged. Only those to the round's own tasks are counted.
   * @param {Place} place
   * @param {Verdict} verdict
   * @returns {void}
   */
  judged(place, verdict) {
    this.note(place, { verdict });
    if (place.extra === undefined) {
      this.#model.set("answers", noted(this.given, place.task, verdict));
      this.#model.save_changes();
    }
  }

  /**
   * @param {Record<string, Work>} works
   * @returns {void}
   */
  restore(works) {
    this.#works = works;
  }
}

/** @param {Place} place */
function keyOf({ task, extra }) {
  return extra === undefined ? String(task) : `extra ${extra}`;
}

/**
 * The answers with one more try written down. The mistake of an earlier try stays beside the
 * right answer that followed, for it may be worth a word tomorrow.
 * @param {Answer[]} answers
 * @param {number} task
 * @param {Verdict} verdict
 * @returns {Answer[]}
 */
export function noted(answers, task, { counts, right, rule, given }) {
  if (!counts) {
    return answers;
  }
  const before = answers.find((answer) => answer.task === task);
  const now = {
    task, given, tries: (before?.tries ?? 0) + 1, right, rule: rule ?? before?.rule ?? null,
  };
  return [...answers.filter((answer) => answer.task !== task), now]
    .sort((one, other) => one.task - other.task);
}

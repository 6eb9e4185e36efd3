/** Where a round stands, how it came there, and which answers were revealed on the way. */
import { after, afterExtra, goBack, goHome, goOn, opened, turn, turnAnswer } from "./flow.js";
import { groupOf } from "./group.js";

/**
 * @typedef {import("./flow.js").Place} Place
 * @typedef {import("./flow.js").Route} Route
 * @typedef {import("../../core/state/task.js").Task} Task
 */

/** The position of a board's round. */
export class Position {
  /** @type {number[]} */
  #revealed = [];

  #route;

  #questions;

  #now;

  /**
   * @param {import("./questions.js").Questions} questions
   * @param {Place} place to begin with
   * @param {() => { waiting: boolean, solved: boolean }} now whether the timer waits to be started,
   *   and whether the question is answered rightly
   */
  constructor(questions, place, now) {
    this.#questions = questions;
    this.#route = /** @type {Route} */ ({ place, trail: [] });
    this.#now = now;
  }

  /** @returns {Route} */
  get route() {
    return this.#route;
  }

  /** @returns {number[]} the tasks whose answer was revealed */
  get revealed() {
    return this.#revealed;
  }

  /** @returns {Place} */
  get place() {
    return this.#route.place;
  }

  /** @returns {Place} where the round itself stands while an extra question is asked */
  get ofRound() {
    return goHome(this.#route).place;
  }

  /** @returns {import("./extra.js").Extra | undefined} the extra question that is asked */
  get extra() {
    return this.#questions.extraAt(this.place);
  }

  /** @returns {Task | undefined} what is asked just now */
  get task() {
    return this.#questions.taskAt(this.place);
  }

  /** @returns {boolean} whether a question is being asked or worked on */
  get working() {
    return this.place.phase === "ask" || this.place.phase === "work";
  }

  /** @returns {number[]} the tasks that stand side by side */
  get group() {
    return groupOf(this.place.task, this.#questions.course);
  }

  /** @returns {boolean} whether several questions are asked side by side just now */
  get together() {
    return this.group.length > 1 && !this.extra && this.place.phase !== "wipe";
  }

  /** @returns {number[]} the tasks of the group whose answer may be seen */
  get open() {
    return this.working ? [] : this.group.filter((task) => this.#revealed.includes(task));
  }

  /** @returns {number} how many steps there are here, or how many counts */
  get steps() {
    return this.place.phase === "wipe" ? this.#questions.counts.length
      : this.task?.steps.length ?? 0;
  }

  /** @returns {import("./flow.js").Turn} what a press on does */
  get turn() {
    const next = this.#next();
    return this.extra && !next ? "home" : turn(this.place, next);
  }

  /** @returns {boolean} whether nothing stands before it */
  get first() {
    return this.back() === null;
  }

  /** @returns {Route | null} one press on, or null at the end */
  on() {
    const next = this.#next();
    return this.extra && !next ? goHome(this.#route) : goOn(this.#route, next);
  }

  /** @returns {Route | null} one press back, or null at the beginning */
  back() {
    return goBack(this.#route, this.#questions.course);
  }

  /**
   * @param {Place} place
   * @returns {Route | null} straight to a place
   */
  to(place) {
    return goOn(this.#route, place);
  }

  /** @returns {Route | null} to the answer, or from it back to where it was asked for */
  answer() {
    return turnAnswer(this.#route, this.#questions.course, this.steps);
  }

  /**
   * One of those that stand side by side.
   * @param {number} task
   * @param {boolean} straight to its answer, without its steps
   * @returns {Route | null}
   */
  choose(task, straight) {
    return this.to(opened(task, this.#questions.tasks, straight));
  }

  /**
   * Take a route; an answer that is shown stays revealed.
   * @param {Route} route
   * @returns {void}
   */
  take(route) {
    this.#route = route;
    const { task, phase, extra } = this.place;
    if (phase === "check" && extra === undefined) {
      this.reveal([task]);
    }
  }

  /** The question that is asked is worked on; going back does not lead before it.
   * @returns {void}
   */
  begin() {
    /** @type {Place} */
    const place = { ...this.place, phase: "work" };
    this.#route = { place, trail: this.#route.trail };
  }

  /**
   * @param {number[]} tasks
   * @returns {void}
   */
  reveal(tasks) {
    this.#revealed = [...new Set([...this.#revealed, ...tasks])];
  }

  /** Hide the answer that is shown.
   * @returns {void}
   */
  hide() {
    this.#revealed = this.#revealed.filter((task) => task !== this.place.task);
  }

  /**
   * Stand somewhere else, as if for the first time.
   * @param {Route} route
   * @param {number[]} [revealed]
   * @returns {void}
   */
  restore(route, revealed = []) {
    this.#route = route;
    this.#revealed = revealed;
  }

  #next() {
    const { waiting, solved } = this.#now();
    const { place, group } = this;
    if (this.extra) {
      return afterExtra(place, this.steps, solved);
    }
    // Where none of the group was worked step by step, answers alone follow each other.
    const straight = !this.#route.trail.some(
      (each) => each.phase === "show" && group.includes(each.task),
    );
    return after(place, this.#questions.course, {
      waiting, solved, open: this.#revealed, straight,
    });
  }
}

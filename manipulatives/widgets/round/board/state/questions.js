/** Everything that a round may ask: its tasks, how many side by side, and the extra questions. */
import { countsBy } from "../count_aloud/counts.js";
import { nextTwin, taskOf } from "./extra.js";

/**
 * @typedef {import("../../core/state/task.js").Task} Task
 * @typedef {import("./extra.js").Extra} Extra
 * @typedef {Pick<import("./flow.js").Place, "task" | "extra">} Which which question is meant
 */

/** The questions of a board's round. */
export class Questions {
  /** @type {Extra[]} */
  #extras = [];

  #model;

  #apart;

  /**
   * @param {WidgetModel} model of the round
   * @param {() => boolean} apart whether each is asked alone even where several could be
   */
  constructor(model, apart) {
    this.#model = model;
    this.#apart = apart;
  }

  /** @returns {Task[]} of the round itself */
  get tasks() {
    return this.#model.get("tasks");
  }

  /** @returns {Extra[]} every extra question so far */
  get extras() {
    return this.#extras;
  }

  /** @param {Extra[]} extras */
  set extras(extras) {
    this.#extras = extras;
  }

  /** @returns {Task[]} the tasks of the round, then those of the extra questions */
  get all() {
    const { tasks } = this;
    return [...tasks, ...this.#extras.flatMap((extra) => taskOf(extra, tasks) ?? [])];
  }

  /** @returns {number[]} what the class counts at the end */
  get counts() {
    return countsBy(this.#model.get("setup").wipe?.by);
  }

  /** @returns {import("./flow.js").Course} */
  get course() {
    const { together = 1 } = this.#model.get("setup");
    return {
      tasks: this.tasks, together: this.#apart() ? 1 : together, count: this.counts.length,
    };
  }

  /** @returns {boolean} whether questions of this round can be asked side by side */
  get several() {
    const { together = 1 } = this.#model.get("setup");
    return together > 1 && this.tasks.length > 1;
  }

  /** @returns {boolean} whether somebody's own numbers make a question of this skill */
  get typed() {
    return this.#model.get("setup").typed === true;
  }

  /** @returns {string} tells these questions from others, for what was saved */
  get fingerprint() {
    return this.tasks.map(({ prompt, answer }) => `${prompt} ${answer}`).join("\n");
  }

  /**
   * @param {Which} which
   * @returns {Extra | undefined}
   */
  extraAt({ extra }) {
    return extra === undefined ? undefined : this.#extras[extra];
  }

  /**
   * @param {Which} which
   * @returns {Task | undefined}
   */
  taskAt(which) {
    const extra = this.extraAt(which);
    return extra ? taskOf(extra, this.tasks) : this.tasks[which.task];
  }

  /**
   * Another question like a task of the round.
   * @param {number} task
   * @returns {Extra | null}
   */
  twinOf(task) {
    return nextTwin(task, this.tasks, this.#extras);
  }

  /**
   * @param {Extra} extra
   * @returns {number} its number, by which a place names it
   */
  add(extra) {
    this.#extras = [...this.#extras, extra];
    return this.#extras.length - 1;
  }
}

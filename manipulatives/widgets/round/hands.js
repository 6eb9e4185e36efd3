/** The manipulative as the round sets it, told apart from what a hand does with it. */
import { alike } from "../shared/alike.js";
import { traitNames, traitsAt } from "./flow.js";

/**
 * @typedef {import("./flow.js").Task} Task
 * @typedef {Record<string, any>} Traits
 */

/** Those traits of a manipulative that a round ever sets. Before it is there, there are none. */
export class Hands {
  /** @type {WidgetModel | null} */
  #child = null;

  /** @type {Traits} how it was before the round touched it */
  #origin = {};

  #base;

  /** While the round itself sets the manipulative, nobody else moves it. */
  #laying = false;

  /** @param {Traits} base what every task starts over */
  constructor(base) {
    this.#base = base;
  }

  /** @returns {boolean} */
  get there() {
    return this.#child !== null;
  }

  /** @returns {boolean} */
  get laying() {
    return this.#laying;
  }

  /** @returns {Traits} how it stands just now */
  get now() {
    const names = Object.keys(this.#origin);
    return Object.fromEntries(names.map((name) => [name, this.#child?.get(name)]));
  }

  /**
   * The manipulative is there.
   * @param {WidgetModel} child
   * @param {Task[]} tasks
   * @returns {void}
   */
  join(child, tasks) {
    this.#child = child;
    this.meet(tasks);
  }

  /**
   * Questions that will set it. What none of them says is as it was: a step that changes it can be
   * taken back.
   * @param {Task[]} tasks
   * @returns {void}
   */
  meet(tasks) {
    for (const name of this.#child ? traitNames(tasks, this.#base) : []) {
      if (!(name in this.#origin)) {
        this.#origin[name] = this.#child?.get(name);
      }
    }
  }

  /**
   * How it is to stand.
   * @param {Task} task
   * @param {import("./flow.js").Place} place
   * @returns {Traits}
   */
  at(task, place) {
    return traitsAt(task, { ...this.#origin, ...this.#base }, place);
  }

  /**
   * @param {Traits} traits
   * @returns {void}
   */
  lay(traits) {
    const child = this.#child;
    if (child) {
      this.#laying = true;
      for (const [name, value] of Object.entries(traits)) {
        if (!alike(child.get(name), value)) {
          child.set(name, structuredClone(value));
        }
      }
      this.#laying = false;
      child.save_changes();
    }
  }
}

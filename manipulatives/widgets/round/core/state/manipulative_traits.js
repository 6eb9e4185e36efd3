/** The traits of the manipulative as the round sets them, told apart from what a hand changes. */
import { alike } from "../../../shared/state/alike.js";
import { traitNames, traitsAt } from "./task.js";

/**
 * @typedef {import("./task.js").Task} Task
 * @typedef {Record<string, any>} Traits
 */

/** Those traits of a manipulative that a round ever sets. Before it is there, there are none. */
export class ManipulativeTraits {
  /** @type {WidgetModel | null} */
  #model = null;

  /** @type {Traits} their values before the round set any */
  #original = {};

  #base;

  #setting = false;

  /** @param {Traits} base what every task starts over */
  constructor(base) {
    this.#base = base;
  }

  /** @returns {boolean} whether the manipulative has come */
  get there() {
    return this.#model !== null;
  }

  /** @returns {boolean} whether the round itself is changing it just now */
  get setting() {
    return this.#setting;
  }

  /** @returns {Traits} their values just now */
  get now() {
    const names = Object.keys(this.#original);
    return Object.fromEntries(names.map((name) => [name, this.#model?.get(name)]));
  }

  /**
   * The manipulative has come.
   * @param {WidgetModel} model
   * @param {Task[]} tasks
   * @returns {void}
   */
  join(model, tasks) {
    this.#model = model;
    this.include(tasks);
  }

  /**
   * Add the traits that these tasks will set. The value of each before that is noted, so that a
   * step which changes it can be undone.
   * @param {Task[]} tasks
   * @returns {void}
   */
  include(tasks) {
    for (const name of this.#model ? traitNames(tasks, this.#base) : []) {
      if (!(name in this.#original)) {
        this.#original[name] = this.#model?.get(name);
      }
    }
  }

  /**
   * The values that they have at a place.
   * @param {Task} task
   * @param {{ step: number, phase: string }} place
   * @returns {Traits}
   */
  at(task, place) {
    return traitsAt(task, { ...this.#original, ...this.#base }, place);
  }

  /**
   * Set them.
   * @param {Traits} traits
   * @returns {void}
   */
  set(traits) {
    const model = this.#model;
    if (model) {
      this.#setting = true;
      for (const [name, value] of Object.entries(traits)) {
        if (!alike(model.get(name), value)) {
          model.set(name, structuredClone(value));
        }
      }
      this.#setting = false;
      model.save_changes();
    }
  }
}

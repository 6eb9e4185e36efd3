/**
 * The state of one widget on a page that has no kernel: what a widget's code may ask of its
 * model, with the events of a notebook host. Setting a trait calls its listeners synchronously.
 *
 * @typedef {(model: Model, ...details: any[]) => void} Listener
 */
import { alike } from "../../../widgets/shared/state/alike.js";

/** The traits of one widget, and their listeners. */
export class Model {
  /** @type {Record<string, any>} */
  #state;

  /** @type {{ name: string, callback: Listener, owner: unknown }[]} */
  #listeners = [];

  #changing = false;

  #pending = false;

  /** @param {Record<string, any>} state */
  constructor(state) {
    this.#state = state;
  }

  /**
   * @param {string} name
   * @returns {any}
   */
  get(name) {
    return this.#state[name];
  }

  /**
   * Set one trait, or several given as an object. Every trait that changed
   * dispatches `change:name`, and after all of them `change` follows once.
   * @param {string | Record<string, any>} given
   * @param {any} [value]
   * @returns {void}
   */
  set(given, value) {
    const next = typeof given === "string" ? { [given]: value } : given;
    const changed = Object.keys(next).filter((name) => !alike(this.#state[name], next[name]));
    Object.assign(this.#state, next);
    this.#pending ||= changed.length > 0;
    // A listener may set a trait too: its own event comes at once, `change` after all of them.
    const outermost = !this.#changing;
    this.#changing = true;
    for (const name of changed) {
      this.#notify(`change:${name}`, this.#state[name]);
    }
    if (!outermost) {
      return;
    }
    while (this.#pending) {
      this.#pending = false;
      this.#notify("change");
    }
    this.#changing = false;
  }

  /**
   * @param {string} names one event, or several with spaces between
   * @param {Listener} callback
   * @param {unknown} [owner] who adds it, for `off`
   * @returns {void}
   */
  on(names, callback, owner) {
    for (const name of names.split(/\s+/)) {
      this.#listeners.push({ name, callback, owner });
    }
  }

  /**
   * Remove the listeners that match every argument given; without arguments, all of them.
   * @param {string | null} [names]
   * @param {Listener | null} [callback]
   * @param {unknown} [owner]
   * @returns {void}
   */
  off(names, callback, owner) {
    const named = names?.split(/\s+/);
    this.#listeners = this.#listeners.filter((each) =>
      (named && !named.includes(each.name)) ||
      (callback && callback !== each.callback) ||
      (owner && owner !== each.owner));
  }

  /**
   * @param {string} name
   * @param {...any} details
   */
  #notify(name, ...details) {
    for (const each of this.#listeners.filter((listener) => listener.name === name)) {
      try {
        each.callback(this, ...details, {});
      } catch (error) {
        // An error in one listener must not stop the others.
        reportError(error);
      }
    }
  }
}

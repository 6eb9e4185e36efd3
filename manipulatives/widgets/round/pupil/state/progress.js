/** Which question of a round a pupil is at, and how far each of them has come. */
import { exampleOf, isDone, isSpent, itemsIn, itemsOf, offered } from "./items.js";
import { questionOf, resultOf } from "./items.js";

/**
 * @typedef {import("./items.js").Item} Item
 * @typedef {import("../../core/state/task.js").Task} Task
 */

/** A pupil's way through the items of a round. */
export class Progress {
  /** @type {Item[]} */
  #items;

  #at = 0;

  #model;

  /** @param {WidgetModel} model of the round */
  constructor(model) {
    this.#model = model;
    this.#items = itemsOf(this.tasks);
  }

  /** @returns {Task[]} */
  get tasks() {
    return this.#model.get("tasks");
  }

  /** @returns {Item[]} */
  get items() {
    return this.#items;
  }

  /** @returns {number} which item is shown */
  get at() {
    return this.#at;
  }

  /** @returns {Item} */
  get item() {
    return this.#items[this.#at];
  }

  /** @returns {Task} */
  get task() {
    return questionOf(this.tasks, this.item);
  }

  /** @returns {Task} the example that opens this question */
  get example() {
    return exampleOf(this.tasks, this.item.of) ?? this.task;
  }

  /** @returns {boolean} whether nothing is left to do with this question */
  get done() {
    return isDone(this.item, this.task);
  }

  /** @returns {boolean[]} for each item whether it is behind the pupil */
  get past() {
    return this.#items.map((item, index) => (
      index < this.#at || isDone(item, questionOf(this.tasks, item))
    ));
  }

  /** @returns {boolean} whether all tries were used up and the steps are not shown yet */
  get spent() {
    return this.item.stage === "try" && isSpent(this.item);
  }

  /** @returns {boolean} whether an answer is awaited */
  get open() {
    return this.item.stage === "try" && !this.item.right && !this.spent;
  }

  /** @returns {(import("./items.js").Result | null)[]} one for each item */
  get results() {
    const setup = this.#model.get("setup");
    return this.#items.map((item) => resultOf(item, questionOf(this.tasks, item), setup));
  }

  /** @returns {string} tells these questions from others, for what was saved */
  get fingerprint() {
    return this.tasks.map(({ prompt, answer }) => `${prompt} ${answer}`).join("\n");
  }

  /**
   * Go on where somebody was, or begin.
   * @param {any} saved with `items` and `at`
   * @returns {boolean} whether what was saved could be used
   */
  restore(saved) {
    const items = saved?.for === this.fingerprint ? itemsIn(saved.items, this.tasks) : null;
    this.#items = items ?? itemsOf(this.tasks);
    this.#at = items && Number.isInteger(saved.at) && items[saved.at] ? saved.at : 0;
    return items !== null;
  }

  /**
   * Go to the next question; after the last task come the twins of those not solved.
   * @returns {boolean} whether there is one
   */
  next() {
    const all = this.tasks.length;
    if (this.#at === all - 1 && this.#items.length === all) {
      this.#items = [...this.#items, ...offered(this.#items, this.tasks)];
    }
    if (this.#at + 1 >= this.#items.length) {
      return false;
    }
    this.#at += 1;
    return true;
  }

  /**
   * Change something of the item that is shown.
   * @param {Partial<Item>} part
   * @returns {void}
   */
  change(part) {
    this.#items = this.#items.map((item, index) => (
      index === this.#at ? { ...item, ...part } : item
    ));
  }
}

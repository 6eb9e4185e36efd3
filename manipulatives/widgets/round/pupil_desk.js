/** One round as one pupil works through it. It knows the models but no screen. */
import { alike } from "../shared/alike.js";
import { Hands } from "./hands.js";
import { judge } from "./judge.js";
import { Pace } from "./pace.js";
import { answered, exampleOf, hinted, isDone, isSpent, itemsIn } from "./pupil_items.js";
import { itemsOf, offered, questionOf, resultOf } from "./pupil_items.js";
import { timerOf } from "./timer.js";

/**
 * @typedef {import("./pupil_items.js").Item} Item
 * @typedef {import("./pupil_items.js").Result} Result
 * @typedef {import("./flow.js").Task} Task
 * @typedef {"item" | "stage" | "text" | "verdict" | "timer"} News what changed: the question
 *   itself, how it stands, what is typed, what was said, or the time
 */

/** A round on one pupil's tablet. */
export class PupilDesk {
  /** @type {Item[]} */
  #items;

  #at = 0;

  #model;

  #hands;

  #pace;

  #changed;

  /**
   * @param {{ model: WidgetModel, now: () => number, changed: (news: News) => void }} given the
   *   model of the round, and whom to tell
   */
  constructor({ model, now, changed }) {
    this.#model = model;
    this.#changed = changed;
    this.#hands = new Hands(model.get("setup").base ?? {});
    this.#pace = new Pace(model, now, () => changed("timer"));
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

  /** @returns {boolean} */
  get done() {
    return isDone(this.item, this.task);
  }

  /** @returns {boolean} whether all tries were used up and the steps are not shown yet */
  get spent() {
    return this.item.stage === "try" && isSpent(this.item);
  }

  /** @returns {boolean} whether an answer is awaited */
  get open() {
    return this.item.stage === "try" && !this.item.right && !this.spent;
  }

  /** @returns {Pace} */
  get pace() {
    return this.#pace;
  }

  /** @returns {(Result | null)[]} one for each item */
  get results() {
    const { skill } = this.#model.get("setup");
    return this.#items.map((item) => resultOf(item, questionOf(this.tasks, item), skill));
  }

  /** @returns {any} everything that is to be kept */
  get kept() {
    return {
      for: this.#mark(), at: this.#at, items: this.#items, timer: this.#pace.kept,
    };
  }

  /**
   * The manipulative is there.
   * @param {WidgetModel} child
   * @returns {void}
   */
  join(child) {
    this.#hands.join(child, this.tasks.flatMap((task) => [task, ...task.twins ?? []]));
    this.#lay();
  }

  /**
   * Begin, or go on where somebody was.
   * @param {any} kept what was kept, or null
   * @returns {void}
   */
  begin(kept) {
    const items = kept?.for === this.#mark() ? itemsIn(kept.items, this.tasks) : null;
    this.#items = items ?? itemsOf(this.tasks);
    this.#at = items && Number.isInteger(kept.at) && items[kept.at] ? kept.at : 0;
    const timer = items && timerOf(kept.timer);
    if (timer) {
      this.#pace.restore(timer, false);
    } else {
      this.#pace.refill();
    }
    this.#lay();
    this.#changed("item");
  }

  /** The example was seen, or the offer taken: the question itself.
   * @returns {void}
   */
  start() {
    this.#set({ stage: "try", own: null });
    this.#turn("item");
  }

  /**
   * The next question.
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
    this.#turn("item");
    return true;
  }

  /**
   * Something was typed or chosen.
   * @param {string} text
   * @returns {void}
   */
  type(text) {
    if (this.open && text !== this.item.text) {
      this.#set({ text });
      this.#run();
      this.#changed("text");
    }
  }

  /** The manipulative was moved.
   * @returns {void}
   */
  moved() {
    if (this.open && !this.item.peek && !this.#hands.laying && this.#hands.there) {
      const own = this.#hands.now;
      if (!alike(own, this.#laid())) {
        this.#set({ own });
        this.#run();
        this.#changed("text");
      }
    }
  }

  /**
   * Check the answer.
   * @param {Facts} facts
   * @returns {void}
   */
  check(facts) {
    if (this.open && !this.item.peek) {
      this.#set(answered(this.item, this.task, judge(this.task, facts, this.item.text)));
      this.#rest();
      this.#changed("verdict");
    }
  }

  /** One more step as a hint.
   * @returns {void}
   */
  hint() {
    if (this.open) {
      this.#set({ ...hinted(this.item, this.task), say: "" });
      this.#turn("stage");
    }
  }

  /** Enough looked at the hint.
   * @returns {void}
   */
  resume() {
    this.#set({ peek: false });
    this.#turn("stage");
  }

  /** The worked steps, one more each time.
   * @returns {void}
   */
  step() {
    this.#set({ stage: "steps", step: Math.min(this.item.step + 1, this.task.steps.length) });
    this.#turn("stage");
  }

  /**
   * Show an example as it stands after some steps.
   * @param {number} step
   * @returns {void}
   */
  show(step) {
    this.#hands.lay(this.#hands.at(this.example, { task: 0, step, phase: "show" }));
  }

  /** Time passes.
   * @returns {void}
   */
  tick() {
    if (this.#pace.running && this.#pace.left === 0) {
      this.#pace.rest();
    }
  }

  /** @param {News} news */
  #turn(news) {
    this.#rest();
    this.#lay();
    this.#changed(news);
  }

  #run() {
    if (this.#pace.waiting && !this.#pace.timer.held) {
      this.#pace.run();
    }
  }

  #rest() {
    if (!this.open) {
      this.#pace.rest();
    }
  }

  /** @param {Partial<Item>} part */
  #set(part) {
    this.#items = this.#items.map((item, index) => (
      index === this.#at ? { ...item, ...part } : item
    ));
  }

  /** @returns {Record<string, any>} how the manipulative is to stand */
  #laid() {
    const { stage, peek, hints, step, own } = this.item;
    if (stage === "watch") {
      return this.#hands.at(this.example, { task: 0, step: 0, phase: "show" });
    }
    if (stage === "steps" || peek) {
      const shown = stage === "steps" ? step : hints;
      return this.#hands.at(this.task, { task: 0, step: shown, phase: "show" });
    }
    // Where something is made, the hint is not left in it.
    const left = this.task.ask.by === "manipulative" ? 0 : hints;
    return { ...this.#hands.at(this.task, { task: 0, step: left, phase: "work" }), ...own };
  }

  #lay() {
    this.#hands.lay(this.#laid());
  }

  /** What was kept belongs to these questions, or it is of no use. */
  #mark() {
    return this.tasks.map(({ prompt, answer }) => `${prompt} ${answer}`).join("\n");
  }
}

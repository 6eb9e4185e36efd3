/** The state of a round that one pupil works through alone. It knows no screen. */
import { alike } from "../../../shared/state/alike.js";
import { judge } from "../../core/state/judge.js";
import { ManipulativeTraits } from "../../core/state/manipulative_traits.js";
import { RoundTimer } from "../../core/state/round_timer.js";
import { timerOf } from "../../core/state/timer.js";
import { answered, hinted } from "./items.js";
import { Progress } from "./progress.js";

/**
 * @typedef {"item" | "stage" | "text" | "verdict" | "timer"} Change what changed: the question
 *   itself, how it stands, what is typed, what was said, or the time
 */

/** A pupil's round: how far it has come, the time, and what the manipulative is set to. */
export class PupilState {
  #traits;

  #changed;

  /**
   * @param {{ model: WidgetModel, now: () => number, changed: (what: Change) => void }} given the
   *   model of the round, the time in milliseconds since 1970, and what is called on every change
   */
  constructor({ model, now, changed }) {
    this.#changed = changed;
    this.#traits = new ManipulativeTraits(model.get("setup").base ?? {});
    this.timer = new RoundTimer(model, now, () => changed("timer"));
    this.progress = new Progress(model);
  }

  /** @returns {any} everything that is to be saved */
  get saved() {
    const { fingerprint, at, items } = this.progress;
    return { for: fingerprint, at, items, timer: this.timer.saved };
  }

  /**
   * The manipulative has come.
   * @param {WidgetModel} manipulative
   * @returns {void}
   */
  join(manipulative) {
    const { tasks } = this.progress;
    this.#traits.join(manipulative, tasks.flatMap((task) => [task, ...task.twins ?? []]));
    this.#setTraits();
  }

  /**
   * Begin, or go on where somebody was.
   * @param {any} saved what was saved, or null
   * @returns {void}
   */
  begin(saved) {
    const timer = this.progress.restore(saved) && timerOf(saved.timer);
    if (timer) {
      this.timer.restore(timer, false);
    } else {
      this.timer.refill();
    }
    this.#setTraits();
    this.#changed("item");
  }

  /** The example was seen, or the offer taken: the question itself.
   * @returns {void}
   */
  start() {
    this.progress.change({ stage: "try", own: null });
    this.#turn("item");
  }

  /**
   * The next question.
   * @returns {boolean} whether there is one
   */
  next() {
    const there = this.progress.next();
    if (there) {
      this.#turn("item");
    }
    return there;
  }

  /**
   * Something was typed or chosen.
   * @param {string} text
   * @returns {void}
   */
  type(text) {
    const { open, item } = this.progress;
    if (open && text !== item.text) {
      this.#work({ text });
    }
  }

  /** The manipulative was moved, by a hand or by the round itself.
   * @returns {void}
   */
  moved() {
    const { open, item } = this.progress;
    if (open && !item.peek && !this.#traits.setting && this.#traits.there) {
      const own = this.#traits.now;
      if (!alike(own, this.#traitsNow())) {
        this.#work({ own });
      }
    }
  }

  /**
   * Check the answer.
   * @param {Facts} facts
   * @returns {void}
   */
  check(facts) {
    const { open, item, task } = this.progress;
    if (open && !item.peek) {
      this.progress.change(answered(item, task, judge(task, facts, item.text)));
      this.#rest();
      this.#changed("verdict");
    }
  }

  /** One more step as a hint.
   * @returns {void}
   */
  hint() {
    const { open, item, task } = this.progress;
    if (open) {
      this.progress.change({ ...hinted(item, task), say: "" });
      this.#turn("stage");
    }
  }

  /** The hint was looked at: back to the pupil's own work.
   * @returns {void}
   */
  resume() {
    this.progress.change({ peek: false });
    this.#turn("stage");
  }

  /** The worked steps, one more each time.
   * @returns {void}
   */
  step() {
    const { item, task } = this.progress;
    this.progress.change({ stage: "steps", step: Math.min(item.step + 1, task.steps.length) });
    this.#turn("stage");
  }

  /**
   * Show the example after some of its steps.
   * @param {number} step
   * @returns {void}
   */
  showExample(step) {
    this.#traits.set(this.#traits.at(this.progress.example, { step, phase: "show" }));
  }

  /** @param {Partial<import("./items.js").Item>} part what the pupil has done */
  #work(part) {
    this.progress.change(part);
    if (this.timer.waiting && !this.timer.timer.held) {
      this.timer.run();
    }
    this.#changed("text");
  }

  /** @param {Change} what */
  #turn(what) {
    this.#rest();
    this.#setTraits();
    this.#changed(what);
  }

  #rest() {
    if (!this.progress.open) {
      this.timer.rest();
    }
  }

  /** @returns {Record<string, any>} the traits that the manipulative has here */
  #traitsNow() {
    const { item: { stage, peek, hints, step, own }, task, example } = this.progress;
    if (stage === "watch") {
      return this.#traits.at(example, { step: 0, phase: "show" });
    }
    if (stage === "steps" || peek) {
      return this.#traits.at(task, { step: stage === "steps" ? step : hints, phase: "show" });
    }
    // Where something is made, the hint is not left in it.
    const left = task.ask.by === "manipulative" ? 0 : hints;
    return { ...this.#traits.at(task, { step: left, phase: "work" }), ...own };
  }

  #setTraits() {
    this.#traits.set(this.#traitsNow());
  }
}

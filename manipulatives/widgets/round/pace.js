/** The timer of a round, kept in its model and told to whom it concerns. */
import { alike } from "../shared/alike.js";
import { fullTimer, left, pause, rest, run, show, stretch, timerOf, waiting } from "./timer.js";

/** @typedef {import("./timer.js").Timer} Timer */

/** How the time of a round passes. */
export class Pace {
  /** @type {Timer} */
  #timer;

  #model;

  #now;

  #changed;

  /**
   * @param {WidgetModel} model of the round
   * @param {() => number} now milliseconds since 1970
   * @param {() => void} changed
   */
  constructor(model, now, changed) {
    this.#model = model;
    this.#now = now;
    this.#changed = changed;
    this.#timer = timerOf(model.get("timer")) ?? this.full;
  }

  /** @returns {Timer} as the round begins */
  get full() {
    const { seconds = 0, timer = "off" } = this.#model.get("setup");
    return fullTimer(seconds, seconds ? timer : "off");
  }

  /** @returns {Timer} */
  get timer() {
    return this.#timer;
  }

  /** @returns {Timer} as it is kept, at rest */
  get kept() {
    return rest(this.#timer, this.#now());
  }

  /** @returns {number} milliseconds */
  get left() {
    return left(this.#timer, this.#now());
  }

  /** @returns {boolean} */
  get running() {
    return this.#timer.since !== null;
  }

  /** @returns {boolean} whether it waits to be started */
  get waiting() {
    return waiting(this.#timer);
  }

  /** @returns {boolean} whether there is a timer, though it may be turned off just now */
  get timed() {
    return this.full.mode !== "off";
  }

  /** Begin with this one, silently.
   * @param {Timer} timer
   * @param {boolean} running
   * @returns {void}
   */
  restore(timer, running) {
    this.#timer = running ? run(timer, this.#now()) : timer;
  }

  /** A timer that came from another view, or from Python.
   * @returns {void}
   */
  receive() {
    const timer = timerOf(this.#model.get("timer"));
    if (timer && !alike(timer, this.#timer)) {
      this.#timer = timer;
      this.#changed();
    }
  }

  /** @returns {void} */
  run() {
    this.#set(run(this.#timer, this.#now()));
  }

  /** @returns {void} */
  pause() {
    this.#set(pause(this.#timer, this.#now()));
  }

  /** @returns {void} */
  rest() {
    this.#set(rest(this.#timer, this.#now()));
  }

  /** @returns {void} */
  stretch() {
    this.#set(stretch(this.#timer, this.#now()));
  }

  /**
   * @param {Timer["mode"]} mode
   * @returns {void}
   */
  show(mode) {
    this.#set(show(this.#timer, mode, this.#now()));
  }

  /** As at the beginning.
   * @returns {void}
   */
  refill() {
    this.#set(this.full);
  }

  /** @param {Timer} timer */
  #set(timer) {
    if (!alike(timer, this.#timer)) {
      this.#timer = timer;
      this.#model.set("timer", timer);
      this.#model.save_changes();
      this.#changed();
    }
  }
}

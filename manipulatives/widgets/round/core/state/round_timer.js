/** The timer of a round, stored in its model; whoever shows it is called when it changes. */
import { alike } from "../../../shared/state/alike.js";
import { fullTimer, left, rest, run, show, timerOf, waiting } from "./timer.js";

/** @typedef {import("./timer.js").Timer} Timer */

/** How the time of a round passes. */
export class RoundTimer {
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

  /** @returns {number} milliseconds since 1970 */
  get now() {
    return this.#now();
  }

  /** @returns {Timer} as it is saved, at rest */
  get saved() {
    return rest(this.#timer, this.now);
  }

  /** @returns {number} milliseconds */
  get left() {
    return left(this.#timer, this.now);
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

  /** Take this one over, without a call.
   * @param {Timer} timer
   * @param {boolean} running
   * @returns {void}
   */
  restore(timer, running) {
    this.#timer = running ? run(timer, this.now) : timer;
  }

  /** @returns {void} */
  run() {
    this.set(run(this.#timer, this.now));
  }

  /** @returns {void} */
  rest() {
    this.set(rest(this.#timer, this.now));
  }

  /**
   * @param {Timer["mode"]} mode
   * @returns {void}
   */
  show(mode) {
    this.set(show(this.#timer, mode, this.now));
  }

  /** As at the beginning.
   * @returns {void}
   */
  refill() {
    this.set(this.full);
  }

  /** Let it rest when its time is used up.
   * @returns {boolean} whether it has just run out
   */
  tick() {
    const out = this.running && this.left === 0;
    if (out) {
      this.rest();
    }
    return out;
  }

  /**
   * @param {Timer} timer
   * @returns {void}
   */
  set(timer) {
    if (!alike(timer, this.#timer)) {
      this.#timer = timer;
      this.#model.set("timer", timer);
      this.#model.save_changes();
      this.#changed();
    }
  }
}

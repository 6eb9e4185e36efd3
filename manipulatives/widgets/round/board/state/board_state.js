/** The state of a round that is taught or worked through at a board. It knows no screen. */
import { alike } from "../../../shared/state/alike.js";
import { judge } from "../../core/state/judge.js";
import { ManipulativeTraits } from "../../core/state/manipulative_traits.js";
import { RoundTimer } from "../../core/state/round_timer.js";
import { timerOf } from "../../core/state/timer.js";
import { Answers } from "./answers.js";
import { placeIn } from "./flow.js";
import { listenTo } from "./listen.js";
import { Position } from "./position.js";
import { USUAL, preferencesIn } from "./preferences.js";
import { Questions } from "./questions.js";
import { dataOf, savedIn } from "./saving.js";
import { pause, stretch } from "./stretch.js";

/**
 * @typedef {import("./flow.js").Place} Place
 * @typedef {import("./flow.js").Route} Route
 * @typedef {import("../../core/state/task.js").Task} Task
 * @typedef {import("./preferences.js").Preferences} Preferences
 * @typedef {"place" | "begun" | "work" | "verdict" | "timer" | "out" | "counted" | "preferences" |
 *   "tasks"} Change
 */

const START = Object.freeze({ task: 0, step: 0, phase: "ask" });

/** A board's round: its questions, where it stands in them, the answers and the time. */
export class BoardState {
  /** @type {Preferences} */
  #preferences = USUAL;

  #model;

  #traits;

  #storage;

  #changed;

  /**
   * @param {{
   *   model: WidgetModel, storage: import("./storage.js").RoundStorage, now: () => number,
   *   changed: (what: Change) => void, signal: AbortSignal,
   * }} given the model of the round, where it is saved, the time in milliseconds since 1970, what
   *   is called on every change, and what ends the listening to the model
   */
  constructor({ model, storage, now, changed, signal }) {
    this.#model = model;
    this.#storage = storage;
    this.#changed = changed;
    this.#traits = new ManipulativeTraits(model.get("setup").base ?? {});
    this.timer = new RoundTimer(model, now, () => changed("timer"));
    this.questions = new Questions(model, () => this.#preferences.apart);
    this.answers = new Answers(model);
    const place = placeIn(model.get("place"), this.questions.course);
    this.position = new Position(this.questions, place, () => (
      { waiting: this.timer.waiting, solved: this.solved }
    ));
    this.#restore(storage.read());
    model.set("place", this.position.ofRound);
    model.set("timer", this.timer.timer);
    model.save_changes();
    listenTo(model, "change:place", () => this.#placeSet(), signal);
    listenTo(model, "change:timer", () => this.#timerSet(), signal);
    listenTo(model, "change:tasks", () => this.#tasksSet(), signal);
    listenTo(model, "change:answers", () => changed("verdict"), signal);
  }

  /** @returns {Preferences} */
  get preferences() {
    return this.#preferences;
  }

  /** @returns {import("./answers.js").Work} on the question that is asked */
  get work() {
    return this.answers.at(this.position.place);
  }

  /** @returns {boolean} whether that question was answered rightly */
  get solved() {
    return this.answers.solved(this.position.place);
  }

  /**
   * The manipulative has come.
   * @param {WidgetModel} manipulative
   * @returns {void}
   */
  join(manipulative) {
    this.#traits.join(manipulative, this.questions.all);
    this.#setTraits();
  }

  /** @returns {boolean} whether there was somewhere to go */
  next() {
    return this.#go(this.position.on());
  }

  /** @returns {boolean} whether there was somewhere to go */
  back() {
    return this.#go(this.position.back());
  }

  /** Show the answer, or hide it again.
   * @returns {boolean} whether there is one
   */
  turnAnswer() {
    if (this.position.place.phase === "check") {
      this.position.hide();
    }
    return this.#go(this.position.answer());
  }

  /** See the first step, also of a task that is solved.
   * @returns {boolean}
   */
  explain() {
    return this.#go(this.position.to({ ...this.position.place, step: 1, phase: "show" }));
  }

  /**
   * Choose one of those that stand side by side: its steps, or, while answers are checked, its
   * answer.
   * @param {number} task
   * @returns {boolean}
   */
  choose(task) {
    return this.#go(this.position.choose(task, this.position.place.phase === "check"));
  }

  /** Reveal the answers of all that stand side by side.
   * @returns {boolean}
   */
  reveal() {
    const { place: { task, phase }, group, route } = this.position;
    this.position.reveal(group);
    return this.#go(phase === "check" ? route : this.position.choose(task, true));
  }

  /** Ask another question like this one.
   * @returns {boolean}
   */
  twin() {
    const twin = this.questions.twinOf(this.position.place.task);
    return twin !== null && this.#askExtra(twin);
  }

  /**
   * Ask a question with numbers of the teacher's own.
   * @param {Task} task
   * @returns {boolean}
   */
  askTyped(task) {
    return this.#askExtra({ of: this.position.place.task, task });
  }

  /**
   * @param {Partial<Preferences>} preferences
   * @returns {void}
   */
  prefer(preferences) {
    const { apart } = this.#preferences;
    this.#preferences = { ...this.#preferences, ...preferences };
    this.#changed(apart === this.#preferences.apart ? "preferences" : "place");
    this.save();
  }

  /** The round once more, from its beginning.
   * @returns {boolean}
   */
  again() {
    this.#forget();
    this.timer.refill();
    this.#model.set("answers", []);
    return this.#arrive({ place: placeIn(START, this.questions.course), trail: [] });
  }

  /**
   * Something was typed or chosen.
   * @param {string} text
   * @returns {void}
   */
  type(text) {
    const { verdict, text: before } = this.work;
    if (this.position.working && !this.solved && text !== before) {
      // "Write your answer first" is done; what was said to an answer still helps.
      this.#note({ text, verdict: verdict?.counts ? verdict : null });
      this.#begin();
      this.#changed("work");
    }
  }

  /** The manipulative was moved, by a hand or by the round itself.
   * @returns {void}
   */
  moved() {
    const own = this.#traits.setting ? null : this.#traits.now;
    if (own && this.position.working && !alike(own, this.#traitsNow())) {
      this.#note({ own });
      this.#begin();
    }
  }

  /**
   * Check the answer.
   * @param {Facts} facts
   * @returns {void}
   */
  check(facts) {
    const { task, working } = this.position;
    if (!task || !working || this.solved) {
      return;
    }
    this.#begin();
    const verdict = judge(task, facts, this.work.text);
    this.#note({ verdict });
    if (verdict.right) {
      this.timer.rest();
    }
    this.answers.judged(this.position.place, verdict);
    this.#changed("verdict");
    this.save();
  }

  /** Start the timer, or pause it.
   * @returns {boolean} whether this round has a timer
   */
  turnTimer() {
    const { timer, position } = this;
    if (!timer.timed) {
      return false;
    }
    if (timer.timer.mode === "off") {
      timer.show("shown");
    }
    if (timer.running) {
      timer.set(pause(timer.timer, timer.now));
    } else if (position.place.phase === "ask" && !position.extra && timer.waiting) {
      this.next();
    } else {
      timer.run();
    }
    return true;
  }

  /** Give more time.
   * @returns {void}
   */
  stretchTimer() {
    this.timer.set(stretch(this.timer.timer, this.timer.now));
  }

  /** Time passes.
   * @returns {void}
   */
  tick() {
    if (this.timer.tick()) {
      this.#changed("out");
    }
    this.save();
  }

  /** Save everything for when the page is opened again.
   * @returns {void}
   */
  save() {
    const { route, revealed } = this.position;
    this.#storage.write(dataOf({
      route, revealed, timer: this.timer.saved, running: this.timer.running,
      answers: this.answers.given, works: this.answers.works, extras: this.questions.extras,
    }, this.#fingerprint(), this.#preferences));
  }

  /** @param {import("./extra.js").Extra} extra */
  #askExtra(extra) {
    const number = this.questions.add(extra);
    /** @type {Place} */
    const place = { task: this.position.place.task, step: 0, phase: "ask", extra: number };
    const task = this.questions.taskAt(place);
    this.#traits.include(task ? [task] : []);
    return this.#go(this.position.to(place));
  }

  /** Leave a question with what was made there, and take a route.
   * @param {Route | null} route
   * @returns {boolean}
   */
  #go(route) {
    if (!route) {
      return false;
    }
    if (this.position.working && this.#traits.there) {
      this.#note({ own: this.#traits.now });
    }
    return this.#arrive(route);
  }

  /** Take a route, whatever was made where it begins.
   * @param {Route} route
   * @returns {true}
   */
  #arrive(route) {
    const { place: before } = this.position;
    this.position.take(route);
    const { task, phase, extra, step } = this.position.place;
    const started = before.phase === "ask" && before.task === task;
    if (phase !== "work" || extra !== undefined) {
      this.timer.rest();
    } else if (!this.solved && (started || !this.timer.timer.held)) {
      this.timer.run();
    }
    this.#tellPlace();
    this.#setTraits();
    this.#changed("place");
    if (phase === "wipe" && before.phase === "wipe" && step > before.step) {
      this.#changed("counted");
    }
    this.save();
    return true;
  }

  /** Whoever types, moves or checks something works on the question. */
  #begin() {
    if (this.position.place.phase === "ask") {
      this.position.begin();
      this.#tellPlace();
      if (!this.timer.timer.held && !this.position.extra) {
        this.timer.run();
      }
      this.#changed("begun");
    }
  }

  /** @param {Partial<import("./answers.js").Work>} part */
  #note(part) {
    this.answers.note(this.position.place, part);
  }

  #tellPlace() {
    this.#model.set("place", this.position.ofRound);
    this.#model.save_changes();
  }

  /** @returns {Record<string, any>} the traits that the manipulative has here */
  #traitsNow() {
    const { task, place, working } = this.position;
    const set = task ? this.#traits.at(task, place) : {};
    return { ...set, ...(working ? this.work.own : null) };
  }

  #setTraits() {
    this.#traits.set(this.position.place.phase === "wipe" ? {} : this.#traitsNow());
  }

  /** Another view, or Python, set the place. */
  #placeSet() {
    const place = placeIn(this.#model.get("place"), this.questions.course);
    if (!alike(place, this.position.ofRound)) {
      this.#go(this.position.to(place));
    }
  }

  /** Another view, or Python, set the timer. */
  #timerSet() {
    const timer = timerOf(this.#model.get("timer"));
    if (timer && !alike(timer, this.timer.timer)) {
      this.timer.restore(timer, false);
      this.#changed("timer");
    }
  }

  /** Python set other tasks. */
  #tasksSet() {
    this.#forget();
    const place = placeIn(this.#model.get("place"), this.questions.course);
    this.position.restore({ place, trail: [] });
    this.#traits.include(this.questions.tasks);
    this.#setTraits();
    this.#changed("tasks");
    this.#changed("place");
  }

  #forget() {
    this.answers.restore({});
    this.questions.extras = [];
    this.position.restore(this.position.route);
  }

  /** What was saved belongs to these questions and this time, or it is of no use. */
  #fingerprint() {
    return [this.questions.fingerprint, JSON.stringify(this.timer.full)].join("\n");
  }

  /** @param {any} data */
  #restore(data) {
    this.#preferences = preferencesIn(data?.preferences);
    const saved = savedIn(data, this.#fingerprint(), this.questions.course);
    if (saved) {
      this.questions.extras = saved.extras;
      this.position.restore(saved.route, saved.revealed);
      this.answers.restore(saved.works);
      this.timer.restore(saved.timer, saved.running);
      this.#model.set("answers", saved.answers);
    }
  }
}

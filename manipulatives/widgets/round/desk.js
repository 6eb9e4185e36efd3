/**
 * One round being taught or worked through: where it stands, what was answered, how much time is
 * left, and what the manipulative is set to. It knows the models but no screen.
 */
import { after, goBack, goOn, placeIn, traitNames, traitsAt, turn, turnAnswer } from "./flow.js";
import { judge, noted } from "./judge.js";
import { fullTimer, left, pause, rest, run, show, stretch, timerOf, waiting } from "./timer.js";

/**
 * @typedef {import("./flow.js").Place} Place
 * @typedef {import("./flow.js").Way} Way
 * @typedef {import("./flow.js").Task} Task
 * @typedef {import("./judge.js").Verdict} Verdict
 * @typedef {import("./timer.js").Timer} Timer
 * @typedef {{ text: string, verdict: Verdict | null, own: Record<string, any> | null }} Work
 *   what a pupil typed or chose, what was said to it, and how the manipulative was left
 * @typedef {"place" | "begun" | "work" | "verdict" | "timer" | "out"} Change
 */

/** A round with everything that lies on the table. */
export class Desk {
  /** @type {WidgetModel | null} */
  #child = null;

  /** @type {Record<string, any>} */
  #origin = {};

  /** @type {Record<number, Work>} */
  #works = {};

  /** @type {Way} */
  #way;

  /** @type {Timer} */
  #timer;

  #model;

  /** While the round itself sets the manipulative, nobody else moves it. */
  #laying = false;

  #keep;

  #now;

  #changed;

  /**
   * @param {{
   *   model: WidgetModel, keep: import("./keep.js").Keep, now: () => number,
   *   changed: (what: Change) => void,
   * }} given the model of the round, and whom to tell
   */
  constructor({ model, keep, now, changed }) {
    this.#model = model;
    this.#keep = keep;
    this.#now = now;
    this.#changed = changed;
    this.#way = { place: placeIn(model.get("place"), this.tasks), trail: [] };
    this.#timer = timerOf(model.get("timer")) ?? this.#fullTimer();
    this.#restore(keep.read());
    model.set("place", this.place);
    model.set("timer", this.#timer);
    model.save_changes();
    model.on("change:place", () => this.#sent());
    model.on("change:timer", () => this.#timed());
    model.on("change:tasks", () => this.#replaced());
    model.on("change:answers", () => changed("verdict"));
  }

  /** @returns {Task[]} */
  get tasks() {
    return this.#model.get("tasks");
  }

  /** @returns {Place} */
  get place() {
    return this.#way.place;
  }

  /** @returns {Task | undefined} */
  get task() {
    return this.tasks[this.place.task];
  }

  /** @returns {Timer} */
  get timer() {
    return this.#timer;
  }

  /** @returns {number} */
  get left() {
    return left(this.#timer, this.#now());
  }

  /** @returns {boolean} whether the round has a timer, though it may be turned off just now */
  get timed() {
    return this.#fullTimer().mode !== "off";
  }

  /** @returns {Work} */
  get work() {
    return this.#works[this.place.task] ?? { text: "", verdict: null, own: null };
  }

  /** @returns {boolean} whether the task is being asked or worked on */
  get working() {
    return this.place.phase === "ask" || this.place.phase === "work";
  }

  /** @returns {boolean} whether the task was answered rightly, by whom it may be */
  get solved() {
    return this.#model.get("answers").some(
      (/** @type {any} */ { task, right }) => right && task === this.place.task,
    );
  }

  /** @returns {import("./flow.js").Turn} what a press on does */
  get turn() {
    return turn(this.place, this.#next());
  }

  /** @returns {boolean} */
  get first() {
    return goBack(this.#way, this.tasks) === null;
  }

  /** @returns {boolean} whether there is a step to be seen */
  get steps() {
    return this.working && Boolean(this.task?.steps.length);
  }

  /**
   * The manipulative is there.
   * @param {WidgetModel} child
   * @returns {void}
   */
  join(child) {
    this.#child = child;
    // What no task says is as it was: a step that changes it can be taken back.
    this.#origin = this.#hands();
    this.#lay();
  }

  /** @returns {boolean} whether there was somewhere to go */
  next() {
    return this.#arrive(goOn(this.#way, this.#next()));
  }

  /** @returns {boolean} whether there was somewhere to go */
  back() {
    return this.#arrive(goBack(this.#way, this.tasks));
  }

  /** @returns {boolean} */
  turnAnswer() {
    return this.#arrive(turnAnswer(this.#way, this.tasks));
  }

  /** See the first step, also of a task that is solved.
   * @returns {boolean}
   */
  explain() {
    const next = placeIn({ ...this.place, step: 1, phase: "show" }, this.tasks);
    return this.#arrive(goOn(this.#way, next));
  }

  /**
   * Something was typed or chosen.
   * @param {string} text
   * @returns {void}
   */
  type(text) {
    if (this.working && !this.solved && text !== this.work.text) {
      const { verdict } = this.work;
      // "Write your answer first" has been heeded; what was said to an answer still helps.
      this.#note({ text, verdict: verdict?.counts ? verdict : null });
      this.#begin();
      this.#changed("work");
    }
  }

  /** The manipulative was moved. What the round itself sets is no one's work.
   * @returns {void}
   */
  moved() {
    const own = this.#laying ? null : this.#hands();
    if (own && this.working && !same(own, this.#laid())) {
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
    if (!this.task || !this.working || this.solved) {
      return;
    }
    this.#begin();
    const verdict = judge(this.task, facts, this.work.text);
    this.#note({ verdict });
    if (verdict.right) {
      this.rest();
    }
    const answers = noted(this.#model.get("answers"), this.place.task, verdict);
    this.#model.set("answers", answers);
    this.#model.save_changes();
    this.#changed("verdict");
    this.save();
  }

  /** Start the timer, or pause it.
   * @returns {boolean} whether this round has a timer
   */
  turnTimer() {
    if (!this.timed) {
      return false;
    }
    if (this.#timer.mode === "off") {
      this.#timer = show(this.#timer, "shown", this.#now());
    }
    if (this.#timer.since !== null) {
      this.#time(pause(this.#timer, this.#now()));
    } else if (this.place.phase === "ask" && waiting(this.#timer)) {
      this.next();
    } else {
      this.#time(run(this.#timer, this.#now()));
    }
    return true;
  }

  /**
   * A button of the timer.
   * @param {import("./bar.js").Press} button
   * @returns {void}
   */
  press(button) {
    if (button === "turn") {
      this.turnTimer();
    } else if (button === "stretch") {
      this.#time(stretch(this.#timer, this.#now()));
    } else {
      this.#time(show(this.#timer, button, this.#now()));
    }
  }

  /** Let the timer rest.
   * @returns {void}
   */
  rest() {
    this.#time(rest(this.#timer, this.#now()));
  }

  /** Time passes.
   * @returns {void}
   */
  tick() {
    if (this.#timer.since !== null && this.left === 0) {
      this.rest();
      this.#changed("out");
    }
    this.save();
  }

  /** Keep everything for when the page is opened again.
   * @returns {void}
   */
  save() {
    const { place, trail } = this.#way;
    const timer = rest(this.#timer, this.#now());
    this.#keep.write({
      for: this.#mark(), place, trail, timer, running: this.#timer.since !== null,
      answers: this.#model.get("answers"), works: this.#works,
    });
  }

  #next() {
    return after(this.place, this.tasks, { waiting: waiting(this.#timer), solved: this.solved });
  }

  /**
   * @param {Way | null} way
   * @returns {boolean}
   */
  #arrive(way) {
    if (!way) {
      return false;
    }
    const { place, working } = this;
    if (working && this.#child) {
      this.#note({ own: this.#hands() });
    }
    this.#way = way;
    const started = place.phase === "ask" && place.task === this.place.task;
    if (this.place.phase !== "work") {
      this.rest();
    } else if (!this.solved && (started || !this.#timer.held)) {
      this.#time(run(this.#timer, this.#now()));
    }
    this.#model.set("place", this.place);
    this.#model.save_changes();
    this.#lay();
    this.#changed("place");
    this.save();
    return true;
  }

  /** Whoever touches a question works on it. */
  #begin() {
    if (this.place.phase === "ask") {
      this.#way = { ...this.#way, place: { ...this.place, phase: "work" } };
      this.#model.set("place", this.place);
      this.#model.save_changes();
      if (!this.#timer.held) {
        this.#time(run(this.#timer, this.#now()));
      }
      this.#changed("begun");
    }
  }

  /** @param {Partial<Work>} part */
  #note(part) {
    this.#works[this.place.task] = { ...this.work, ...part };
  }

  /** @param {Timer} timer */
  #time(timer) {
    if (!same(timer, this.#timer)) {
      this.#timer = timer;
      this.#model.set("timer", timer);
      this.#model.save_changes();
      this.#changed("timer");
    }
  }

  /** @returns {Record<string, any>} */
  #base() {
    return { ...this.#origin, ...this.#model.get("setup").base };
  }

  /** @returns {Record<string, any>} how the manipulative stands just now */
  #hands() {
    const names = traitNames(this.tasks, this.#model.get("setup").base ?? {});
    return Object.fromEntries(names.map((name) => [name, this.#child?.get(name)]));
  }

  /** @returns {Record<string, any>} how the manipulative is to stand */
  #laid() {
    const { task } = this;
    const set = task ? traitsAt(task, this.#base(), this.place) : {};
    return { ...set, ...(this.working ? this.work.own : null) };
  }

  #lay() {
    const child = this.#child;
    if (child) {
      this.#laying = true;
      for (const [name, value] of Object.entries(this.#laid())) {
        if (!same(child.get(name), value)) {
          child.set(name, structuredClone(value));
        }
      }
      this.#laying = false;
      child.save_changes();
    }
  }

  /** Another view, or Python, went elsewhere. */
  #sent() {
    const place = placeIn(this.#model.get("place"), this.tasks);
    if (!same(place, this.place)) {
      this.#arrive(goOn(this.#way, place));
    }
  }

  #timed() {
    const timer = timerOf(this.#model.get("timer"));
    if (timer && !same(timer, this.#timer)) {
      this.#timer = timer;
      this.#changed("timer");
    }
  }

  #replaced() {
    this.#works = {};
    this.#way = { place: placeIn(this.#model.get("place"), this.tasks), trail: [] };
    this.#lay();
    this.#changed("place");
  }

  #fullTimer() {
    const { seconds = 0, timer = "off" } = this.#model.get("setup");
    return fullTimer(seconds, seconds ? timer : "off");
  }

  /** What was kept belongs to these questions and this time, or it is of no use. */
  #mark() {
    const questions = this.tasks.map(({ prompt, answer }) => `${prompt} ${answer}`);
    return [...questions, JSON.stringify(this.#fullTimer())].join("\n");
  }

  /** @param {any} kept */
  #restore(kept) {
    const timer = timerOf(kept?.timer);
    // A round made anew under the same key has other questions: begin at its beginning.
    if (kept?.for !== this.#mark() || !timer || !Array.isArray(kept.trail)) {
      return;
    }
    const trail = kept.trail.map((/** @type {any} */ each) => placeIn(each, this.tasks));
    this.#way = { place: placeIn(kept.place, this.tasks), trail };
    this.#timer = kept.running ? run(timer, this.#now()) : timer;
    const works = Object.entries(kept.works ?? {});
    this.#works = Object.fromEntries(works.filter(([, work]) => typeof work?.text === "string"));
    this.#model.set("answers", Array.isArray(kept.answers) ? kept.answers : []);
  }
}

/**
 * @param {any} one
 * @param {any} other
 * @returns {boolean}
 */
function same(one, other) {
  if (typeof one !== "object" || typeof other !== "object" || !one || !other) {
    return one === other;
  }
  const names = Object.keys(one);
  return names.length === Object.keys(other).length &&
    names.every((/** @type {string} */ name) => same(one[name], other[name]));
}

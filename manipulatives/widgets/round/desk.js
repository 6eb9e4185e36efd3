/**
 * One round being taught or worked through: where it stands, what was answered, how much time is
 * left, and what the manipulative is set to. It knows the models but no screen.
 */
import { alike } from "../shared/alike.js";
import { asked, nextTwin } from "./aside.js";
import { countsBy } from "./counting.js";
import { after, afterAside, goBack, goHome, goOn, opened, placeIn } from "./flow.js";
import { turn, turnAnswer } from "./flow.js";
import { groupOf } from "./group.js";
import { Hands } from "./hands.js";
import { judge, noted } from "./judge.js";
import { Pace } from "./pace.js";
import { USUAL, restored, tasteOf } from "./restored.js";

/**
 * @typedef {import("./flow.js").Place} Place
 * @typedef {import("./flow.js").Way} Way
 * @typedef {import("./flow.js").Task} Task
 * @typedef {import("./aside.js").Aside} Aside
 * @typedef {import("./restored.js").Work} Work
 * @typedef {import("./restored.js").Taste} Taste
 * @typedef {"place" | "begun" | "work" | "verdict" | "timer" | "out" | "counted" | "taste" |
 *   "tasks"} Change
 */

const START = Object.freeze({ task: 0, step: 0, phase: "ask" });

/** A round with everything that lies on the table. */
export class Desk {
  /** @type {Record<string, Work>} */
  #works = {};

  /** @type {Aside[]} every question that was asked beside the round */
  #asides = [];

  /** @type {number[]} the tasks whose answer was revealed */
  #open = [];

  /** @type {Taste} */
  #taste = USUAL;

  /** @type {Way} */
  #way;

  #model;

  #hands;

  #pace;

  #keep;

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
    this.#changed = changed;
    this.#hands = new Hands(model.get("setup").base ?? {});
    this.#pace = new Pace(model, now, () => changed("timer"));
    this.#way = { place: placeIn(model.get("place"), this.course), trail: [] };
    this.#restore(keep.read());
    model.set("place", this.#told);
    model.set("timer", this.timer);
    model.save_changes();
    model.on("change:place", () => this.#sent());
    model.on("change:timer", () => this.#pace.receive());
    model.on("change:tasks", () => this.#replaced());
    model.on("change:answers", () => changed("verdict"));
  }

  /** @returns {Task[]} */
  get tasks() {
    return this.#model.get("tasks");
  }

  /** @returns {import("./flow.js").Course} */
  get course() {
    const { together = 1 } = this.#model.get("setup");
    return {
      tasks: this.tasks,
      together: this.#taste.apart ? 1 : together,
      count: this.counts.length,
    };
  }

  /** @returns {number[]} what the class counts at the end */
  get counts() {
    return countsBy(this.#model.get("setup").wipe?.by);
  }

  /** @returns {Place} */
  get place() {
    return this.#way.place;
  }

  /** @returns {Aside | undefined} */
  get aside() {
    const { aside } = this.place;
    return aside === undefined ? undefined : this.#asides[aside];
  }

  /** @returns {Task | undefined} what is asked just now */
  get task() {
    return this.aside ? asked(this.aside, this.tasks) : this.tasks[this.place.task];
  }

  /** @returns {number[]} the tasks that stand side by side */
  get group() {
    return groupOf(this.place.task, this.course);
  }

  /** @returns {boolean} whether several questions are asked side by side just now */
  get together() {
    return this.group.length > 1 && !this.aside && this.place.phase !== "wipe";
  }

  /** @returns {number[]} the tasks of the group whose answer may be seen */
  get open() {
    return this.working ? [] : this.group.filter((task) => this.#open.includes(task));
  }

  /** @returns {Taste} */
  get taste() {
    return this.#taste;
  }

  /** @returns {boolean} whether questions of this round can be asked side by side */
  get several() {
    const { together = 1 } = this.#model.get("setup");
    return together > 1 && this.tasks.length > 1;
  }

  /** @returns {boolean} whether somebody's own numbers make a question of this skill */
  get typed() {
    return this.#model.get("setup").typed === true;
  }

  /** @returns {boolean} whether there is another question like this one */
  get twinned() {
    return nextTwin(this.place.task, this.tasks, this.#asides) !== null;
  }

  /** @returns {import("./timer.js").Timer} */
  get timer() {
    return this.#pace.timer;
  }

  /** @returns {number} */
  get left() {
    return this.#pace.left;
  }

  /** @returns {boolean} whether the round has a timer, though it may be turned off just now */
  get timed() {
    return this.#pace.timed;
  }

  /** @returns {Work} */
  get work() {
    return this.#works[this.#key] ?? { text: "", verdict: null, own: null };
  }

  /** @returns {boolean} whether the task is being asked or worked on */
  get working() {
    return this.place.phase === "ask" || this.place.phase === "work";
  }

  /** @returns {boolean} whether the task was answered rightly, by whom it may be */
  get solved() {
    const { task } = this.place;
    return this.aside ? this.work.verdict?.right === true : this.#model.get("answers").some(
      (/** @type {any} */ answer) => answer.right && answer.task === task,
    );
  }

  /** @returns {import("./flow.js").Turn} what a press on does */
  get turn() {
    return this.aside && !this.#next() ? "home" : turn(this.place, this.#next());
  }

  /** @returns {boolean} */
  get first() {
    return goBack(this.#way, this.course) === null;
  }

  /** @returns {number} how many steps there are where we stand, or how many counts */
  get steps() {
    return this.place.phase === "wipe" ? this.counts.length : this.task?.steps.length ?? 0;
  }

  /**
   * The manipulative is there.
   * @param {WidgetModel} child
   * @returns {void}
   */
  join(child) {
    this.#hands.join(child, this.#questions);
    this.#lay();
  }

  /** @returns {boolean} whether there was somewhere to go */
  next() {
    const next = this.#next();
    return this.#arrive(this.aside && !next ? goHome(this.#way) : goOn(this.#way, next));
  }

  /** @returns {boolean} whether there was somewhere to go */
  back() {
    return this.#arrive(goBack(this.#way, this.course));
  }

  /** @returns {boolean} */
  turnAnswer() {
    const { phase, task } = this.place;
    if (phase === "check") {
      this.#open = this.#open.filter((each) => each !== task);
    }
    return this.#arrive(turnAnswer(this.#way, this.course, this.steps));
  }

  /** See the first step, also of a task that is solved.
   * @returns {boolean}
   */
  explain() {
    return this.#arrive(goOn(this.#way, { ...this.place, step: 1, phase: "show" }));
  }

  /**
   * Choose one of those that stand side by side: its steps, or, while answers are checked, its
   * answer.
   * @param {number} task
   * @returns {boolean}
   */
  choose(task) {
    const straight = this.place.phase === "check";
    return this.#arrive(goOn(this.#way, opened(task, this.tasks, straight)));
  }

  /** The answers of all that stand side by side.
   * @returns {boolean}
   */
  reveal() {
    this.#open = [...new Set([...this.#open, ...this.group])];
    const { task } = this.place;
    const straight = goOn(this.#way, opened(task, this.tasks, true));
    return this.#arrive(this.place.phase === "check" ? this.#way : straight);
  }

  /** Another like this.
   * @returns {boolean}
   */
  twin() {
    const twin = nextTwin(this.place.task, this.tasks, this.#asides);
    return twin !== null && this.#beside(twin);
  }

  /**
   * A question with numbers of the teacher's own.
   * @param {Task} task
   * @returns {boolean}
   */
  put(task) {
    return this.#beside({ of: this.place.task, task });
  }

  /**
   * @param {Partial<Taste>} taste
   * @returns {void}
   */
  like(taste) {
    const apart = this.#taste.apart !== (taste.apart ?? this.#taste.apart);
    this.#taste = { ...this.#taste, ...taste };
    this.#changed(apart ? "place" : "taste");
    this.save();
  }

  /** The round once more, from its beginning.
   * @returns {boolean}
   */
  again() {
    this.#clear();
    this.#pace.refill();
    this.#model.set("answers", []);
    return this.#arrive({ place: placeIn(START, this.course), trail: [] });
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
    const own = this.#hands.laying ? null : this.#hands.now;
    if (own && this.working && !alike(own, this.#laid())) {
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
    if (!this.aside) {
      const answers = noted(this.#model.get("answers"), this.place.task, verdict);
      this.#model.set("answers", answers);
      this.#model.save_changes();
    }
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
    if (this.timer.mode === "off") {
      this.#pace.show("shown");
    }
    if (this.#pace.running) {
      this.#pace.pause();
    } else if (this.place.phase === "ask" && !this.aside && this.#pace.waiting) {
      this.next();
    } else {
      this.#pace.run();
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
      this.#pace.stretch();
    } else if (button === "tone") {
      this.like({ tone: !this.#taste.tone });
    } else {
      this.#pace.show(button);
    }
  }

  /** Let the timer rest.
   * @returns {void}
   */
  rest() {
    this.#pace.rest();
  }

  /** Time passes.
   * @returns {void}
   */
  tick() {
    if (this.#pace.running && this.left === 0) {
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
    this.#keep.write({
      for: this.#mark(), place, trail, timer: this.#pace.kept, running: this.#pace.running,
      answers: this.#model.get("answers"), works: this.#works, asides: this.#asides,
      open: this.#open, taste: this.#taste,
    });
  }

  /** @returns {string} the name of what is asked just now, among the works */
  get #key() {
    const { task, aside } = this.place;
    return aside === undefined ? String(task) : `aside ${aside}`;
  }

  /** @returns {Place} where the round itself stands, as others are told */
  get #told() {
    return goHome(this.#way).place;
  }

  /** @returns {Task[]} everything that may be asked, for what it does to the manipulative */
  get #questions() {
    const beside = this.#asides.map((aside) => asked(aside, this.tasks) ?? []).flat();
    return [...this.tasks, ...beside];
  }

  #next() {
    const { place, solved } = this;
    if (this.aside) {
      return afterAside(place, this.steps, solved);
    }
    const { course, group } = this;
    // Where none of the group was worked step by step, answers alone follow each other.
    const straight = !this.#way.trail.some(
      (each) => each.phase === "show" && group.includes(each.task),
    );
    const waiting = this.#pace.waiting;
    return after(place, course, { waiting, solved, open: this.#open, straight });
  }

  /** @param {Aside} aside */
  #beside(aside) {
    this.#asides = [...this.#asides, aside];
    const { task } = this.place;
    const question = asked(aside, this.tasks);
    this.#hands.meet(question ? [question] : []);
    const place = { task, step: 0, phase: /** @type {const} */ ("ask") };
    return this.#arrive(goOn(this.#way, { ...place, aside: this.#asides.length - 1 }));
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
    if (working && this.#hands.there) {
      this.#note({ own: this.#hands.now });
    }
    this.#way = way;
    const { task, phase, aside, step } = this.place;
    if (phase === "check" && aside === undefined && !this.#open.includes(task)) {
      this.#open = [...this.#open, task];
    }
    const started = place.phase === "ask" && place.task === task;
    if (phase !== "work" || aside !== undefined) {
      this.rest();
    } else if (!this.solved && (started || !this.timer.held)) {
      this.#pace.run();
    }
    this.#model.set("place", this.#told);
    this.#model.save_changes();
    this.#lay();
    this.#changed("place");
    if (phase === "wipe" && place.phase === "wipe" && step > place.step) {
      this.#changed("counted");
    }
    this.save();
    return true;
  }

  /** Whoever touches a question works on it. */
  #begin() {
    if (this.place.phase === "ask") {
      this.#way = { ...this.#way, place: { ...this.place, phase: "work" } };
      this.#model.set("place", this.#told);
      this.#model.save_changes();
      if (!this.timer.held && !this.aside) {
        this.#pace.run();
      }
      this.#changed("begun");
    }
  }

  /** @param {Partial<Work>} part */
  #note(part) {
    this.#works[this.#key] = { ...this.work, ...part };
  }

  /** @returns {Record<string, any>} how the manipulative is to stand */
  #laid() {
    const { task } = this;
    const set = task ? this.#hands.at(task, this.place) : {};
    return { ...set, ...(this.working ? this.work.own : null) };
  }

  #lay() {
    this.#hands.lay(this.place.phase === "wipe" ? {} : this.#laid());
  }

  /** Another view, or Python, went elsewhere. */
  #sent() {
    const place = placeIn(this.#model.get("place"), this.course);
    if (!alike(place, this.#told)) {
      this.#arrive(goOn(this.#way, place));
    }
  }

  #replaced() {
    this.#clear();
    this.#way = { place: placeIn(this.#model.get("place"), this.course), trail: [] };
    this.#hands.meet(this.tasks);
    this.#lay();
    this.#changed("tasks");
    this.#changed("place");
  }

  #clear() {
    this.#works = {};
    this.#asides = [];
    this.#open = [];
  }

  /** What was kept belongs to these questions and this time, or it is of no use. */
  #mark() {
    const questions = this.tasks.map(({ prompt, answer }) => `${prompt} ${answer}`);
    return [...questions, JSON.stringify(this.#pace.full)].join("\n");
  }

  /** @param {any} kept */
  #restore(kept) {
    this.#taste = tasteOf(kept?.taste);
    const found = restored(kept, this.#mark(), this.course);
    if (found) {
      this.#way = found.way;
      this.#asides = found.asides;
      this.#open = found.open;
      this.#works = found.works;
      this.#pace.restore(found.timer, found.running);
      this.#model.set("answers", found.answers);
    }
  }
}

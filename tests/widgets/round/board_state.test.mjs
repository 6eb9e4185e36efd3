// A round worked through without a screen: its state, with models that only hold what is set.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { BoardState } from "../../../manipulatives/widgets/round/board/state/board_state.js";
import {
  after, goBack, goOn, turnAnswer,
} from "../../../manipulatives/widgets/round/board/state/flow.js";

const file = new URL("../../cases/round_flow.json", import.meta.url);
const cases = JSON.parse(readFileSync(file, "utf8"));
const START = { task: 0, step: 0, phase: "ask" };

function model(state) {
  const listeners = [];
  const held = structuredClone(state);
  return {
    get: (name) => held[name],
    set(name, value) {
      const other = JSON.stringify(held[name]) !== JSON.stringify(value);
      held[name] = value;
      for (const [event, callback] of other ? listeners : []) {
        if (event === `change:${name}`) {
          callback();
        }
      }
    },
    on: (event, callback) => listeners.push([event, callback]),
    off(event, callback) {
      const index = listeners.findIndex((each) => each[0] === event && each[1] === callback);
      listeners.splice(index, 1);
    },
    save_changes() {},
    listened: () => listeners.map(([event]) => event),
  };
}

function task(number, steps = 2) {
  return {
    prompt: `Question ${number}`,
    answer: `${number}:00`,
    spoken: "it",
    ask: { by: "keypad", form: "time" },
    start: { dial: 10 * number },
    goal: ["=", "answer", `${number}:00`],
    steps: Array.from({ length: steps }, (_, step) => ({
      say: `Step ${step + 1}`,
      class: "",
      show: step ? { arc: true } : { sector: true, dial: 10 * number + 1 },
    })),
    mistakes: [
      { rule: "late", when: ["=", "answer", `${number}:30`], answer: null, pupil: "Look." },
    ],
  };
}

function table({
  timer = "off", seconds = 60, saved = null, tasks = [task(1), task(2)], together = 1, wipe = null,
} = {}) {
  const place = START;
  const base = { arc: false, sector: false, buttons: true };
  const round = model({
    tasks, place, timer: {}, answers: [], setup: { seconds, timer, base, together, wipe },
  });
  const child = model({ dial: 0, arc: false, sector: false, buttons: true, other: 1 });
  const seen = [];
  const box = { now: 1000, saved };
  const end = new AbortController();
  const state = new BoardState({
    model: round,
    storage: { read: () => box.saved, write: (data) => { box.saved = structuredClone(data); } },
    now: () => box.now,
    changed: (what) => seen.push(what),
    signal: end.signal,
  });
  state.join(child);
  // The manipulative tells when a hand moves it.
  const move = (dial) => {
    child.set("dial", dial);
    state.moved();
  };
  const stands = () => ["dial", "sector", "arc", "buttons"].map((name) => child.get(name));
  return { state, round, child, box, seen, end, move, stands };
}

function course() {
  const tasks = cases.steps.map((count) => ({ steps: Array(count).fill({}) }));
  return { tasks, together: 1, count: 2 };
}

test("presses alone show every step of every task once, and back again the whole way", () => {
  let route = { place: START, trail: [] };
  const there = [];
  while (route) {
    there.push(route);
    route = goOn(route, after(route.place, course(), { waiting: false, solved: false }));
  }
  const places = cases.steps.flatMap((count, number) => [
    { task: number, step: 0, phase: "ask" },
    ...Array.from({ length: count }, (_, step) => (
      { task: number, step: step + 1, phase: "show" }
    )),
    { task: number, step: count, phase: "check" },
  ]);
  for (const step of [0, 1, 2]) {
    places.push({ task: cases.steps.length - 1, step, phase: "wipe" });
  }
  assert.deepEqual(there.map(({ place }) => place), places);
  const back = [];
  for (route = there.at(-1); route; route = goBack(route, course())) {
    back.push(route.place);
  }
  assert.deepEqual(back, places.toReversed());
});

test("the answer is shown and hidden again wherever we are", () => {
  let route = { place: START, trail: [] };
  while (route) {
    const shown = turnAnswer(route, course(), cases.steps[route.place.task]);
    if (route.place.phase === "wipe") {
      assert.equal(shown, null);
    } else if (route.place.phase === "check") {
      assert.notEqual(shown.place.phase, "check");
      assert.equal(shown.place.task, route.place.task);
    } else {
      assert.equal(shown.place.phase, "check");
      assert.deepEqual(turnAnswer(shown, course(), shown.place.step), route);
    }
    route = goOn(route, after(route.place, course(), { waiting: false, solved: false }));
  }
});

test("the manipulative stands as the task and the steps so far say", () => {
  const { state, stands } = table();
  assert.deepEqual(stands(), [10, false, false, true]);
  const expected = [[11, true, false, false], [11, true, true, false], [11, true, true, false],
    [20, false, false, true]];
  for (const each of expected) {
    state.next();
    assert.deepEqual(stands(), each);
  }
});

test("traits that the round never sets are left alone", () => {
  const { state, child } = table();
  child.set("other", 2);
  state.next();
  state.next();
  assert.equal(child.get("other"), 2);
});

test("a step that changes what no task and no setting names can be taken back", () => {
  const tasks = [task(1)];
  tasks[0].steps[0].show = { other: 5 };
  const { state, child } = table({ tasks });
  state.next();
  assert.equal(child.get("other"), 5);
  state.back();
  assert.equal(child.get("other"), 1);
});

test("showing in the middle of the work keeps the pupil's own hands and answer", () => {
  const { state, move, stands } = table();
  move(17);
  state.type("4:3");
  state.next();
  assert.deepEqual(stands(), [11, true, false, false]);
  state.back();
  assert.deepEqual(stands(), [17, false, false, true]);
  assert.equal(state.work.text, "4:3");
});

test("whoever touches a question works on it; what the round sets is no one's work", () => {
  const { state, move } = table();
  assert.equal(state.position.place.phase, "ask");
  state.moved();
  assert.equal(state.position.place.phase, "ask");
  move(17);
  assert.equal(state.position.place.phase, "work");
});

test("a wrong answer stays to be changed, a right one leads to the next question", () => {
  const { state, round } = table();
  state.type("1:30");
  state.check({});
  assert.equal(state.work.verdict.say, "Look.");
  assert.equal(state.position.turn, "first");
  state.type("1:00");
  assert.equal(state.work.verdict.say, "Look.");
  state.check({});
  assert.equal(state.solved, true);
  assert.equal(state.position.turn, "question");
  state.type("7:77");
  state.check({});
  assert.deepEqual(round.get("answers"), [
    { task: 0, given: "1:00", tries: 2, right: true, rule: "late" },
  ]);
  state.next();
  assert.deepEqual(state.position.place, { task: 1, step: 0, phase: "ask" });
  assert.equal(state.work.text, "");
  state.back();
  assert.equal(state.position.place.task, 0);
  assert.deepEqual([state.work.text, state.work.verdict.right], ["1:00", true]);
});

test("the steps of a solved task can still be seen", () => {
  const { state } = table();
  state.type("1:00");
  state.check({});
  state.explain();
  assert.deepEqual(state.position.place, { task: 0, step: 1, phase: "show" });
  state.back();
  assert.equal(state.position.place.phase, "work");
});

test("that an answer is missing is said until there is one", () => {
  const { state, round } = table();
  state.check({});
  assert.match(state.work.verdict.say, /first/);
  state.type("1");
  assert.equal(state.work.verdict, null);
  assert.deepEqual(round.get("answers"), []);
});

test("the timer starts with the work, rests while the answer is shown, and goes on", () => {
  const { state, box } = table({ timer: "shown" });
  assert.equal(state.position.turn, "start");
  state.next();
  assert.equal(state.position.place.phase, "work");
  box.now += 10_000;
  state.next();
  box.now += 500_000;
  assert.equal(state.timer.left, 50_000);
  state.back();
  box.now += 5_000;
  assert.equal(state.timer.left, 45_000);
});

test("paused by hand, it waits for a hand", () => {
  const { state, box } = table({ timer: "shown" });
  state.next();
  state.turnTimer();
  state.next();
  state.back();
  box.now += 10_000;
  assert.equal(state.timer.left, 60_000);
  state.turnTimer();
  box.now += 10_000;
  assert.equal(state.timer.left, 50_000);
});

test("running out is told once and loses nothing", () => {
  const { state, box, seen } = table({ timer: "shown" });
  state.next();
  state.type("1:0");
  box.now += 61_000;
  state.tick();
  state.tick();
  assert.equal(seen.filter((what) => what === "out").length, 1);
  assert.deepEqual([state.position.place.phase, state.work.text], ["work", "1:0"]);
  state.type("1:00");
  state.check({});
  assert.equal(state.solved, true);
  // With no time left the next question needs no start.
  state.next();
  assert.equal(state.position.turn, "first");
});

test("a round without a timer has none to start", () => {
  assert.equal(table().state.turnTimer(), false);
  assert.equal(table({ timer: "shown", seconds: 0 }).state.turnTimer(), false);
});

test("turned off in the middle, the timer can be called back", () => {
  const { state } = table({ timer: "shown" });
  state.timer.show("off");
  assert.equal(state.position.turn, "first");
  assert.equal(state.turnTimer(), true);
  assert.deepEqual([state.timer.timer.mode, state.position.place.phase], ["shown", "work"]);
});

test("taken up again, everything is where it was", () => {
  const first = table({ timer: "shown" });
  first.state.next();
  first.move(17);
  first.state.type("4:3");
  first.box.now += 20_000;
  first.state.save();
  const again = table({ timer: "shown", saved: first.box.saved });
  assert.equal(again.state.position.place.phase, "work");
  assert.equal(again.state.work.text, "4:3");
  assert.deepEqual(again.stands(), [17, false, false, true]);
  assert.equal(again.state.timer.left, 40_000);
  again.box.now += 1_000;
  assert.equal(again.state.timer.left, 39_000);
  again.state.back();
  assert.deepEqual(again.state.position.place, START);
});

test("what was saved for other questions, or is damaged, is not used", () => {
  const first = table();
  first.state.next();
  first.state.save();
  const { saved } = first.box;
  assert.equal(table({ saved }).state.position.place.phase, "show");
  const others = [task(7), task(2)];
  const damaged = [null, 7, "x", [], {}, { ...saved, timer: null }, { ...saved, trail: "far" }];
  for (const each of damaged) {
    assert.deepEqual(table({ saved: each }).state.position.place, START);
  }
  assert.deepEqual(table({ saved, tasks: others }).state.position.place, START);
  assert.deepEqual(table({ saved, timer: "shown" }).state.position.place, START);
  const place = { task: 99, phase: "nowhere" };
  for (const works of [null, 7, { 1: null }, { 1: { text: 7 } }]) {
    const { state } = table({ saved: { ...saved, place, works, answers: null } });
    assert.deepEqual(state.position.place, { task: 1, step: 0, phase: "ask" });
    assert.deepEqual([state.work.text, state.solved], ["", false]);
  }
});

test("sent elsewhere from outside, it goes there and can come back", () => {
  const { state, round, stands } = table();
  state.next();
  round.set("place", { task: 1, step: 1, phase: "show" });
  assert.deepEqual(stands(), [21, true, false, false]);
  state.back();
  assert.deepEqual(state.position.place, { task: 0, step: 1, phase: "show" });
});

test("given other tasks, it begins with them", () => {
  const { state, round, stands } = table();
  state.type("1:0");
  round.set("tasks", [task(5)]);
  assert.deepEqual(stands(), [50, false, false, true]);
  assert.equal(state.work.text, "");
});

function twins() {
  return [{ ...task(1), twins: [task(3), task(4, 1)] }, task(2)];
}

test("another like this is worked in the place of its question, and back", () => {
  const { state, round, stands } = table({ tasks: twins() });
  state.next();
  assert.equal(state.twin(), true);
  assert.deepEqual([state.position.task.prompt, state.position.place.phase], ["Question 3", "ask"]);
  // To all others the round stands where it was left.
  assert.deepEqual(round.get("place"), { task: 0, step: 1, phase: "show" });
  assert.deepEqual(stands(), [30, false, false, true]);
  const seen = [];
  while (state.position.extra) {
    seen.push([state.position.place.phase, state.position.turn]);
    state.next();
  }
  assert.deepEqual(seen, [
    ["ask", "first"], ["show", "step"], ["show", "answer"], ["check", "home"],
  ]);
  assert.deepEqual(state.position.place, { task: 0, step: 1, phase: "show" });
  assert.deepEqual(stands(), [11, true, false, false]);
});

test("twins come one after the other, and after the last the first again", () => {
  const { state } = table({ tasks: twins() });
  state.next();
  const prompts = Array.from({ length: 3 }, () => {
    state.twin();
    return state.position.task.prompt;
  });
  assert.deepEqual(prompts, ["Question 3", "Question 4", "Question 3"]);
  state.back();
  assert.equal(state.position.task.prompt, "Question 4");
  state.back();
  state.back();
  assert.equal(state.position.extra, undefined);
  state.next();
  state.next();
  state.next();
  assert.deepEqual([state.position.place.task, state.position.extra], [1, undefined]);
  assert.equal(state.twin(), false);
});

test("an answer to an extra question is judged and not counted", () => {
  const { state, round } = table({ tasks: twins() });
  state.next();
  state.twin();
  state.type("3:00");
  state.check({});
  assert.deepEqual([state.solved, state.position.turn], [true, "home"]);
  assert.deepEqual(round.get("answers"), []);
  state.next();
  assert.deepEqual([state.solved, state.position.place.phase], [false, "show"]);
});

test("numbers of the teacher's own are asked as an extra question", () => {
  const { state, box } = table();
  state.next();
  const own = { ...task(9), start: { dial: 90, other: 7 } };
  state.askTyped(own);
  assert.equal(state.position.task.prompt, "Question 9");
  // Loaded anew, it is still there, and so is the way back.
  const again = table({ saved: box.saved });
  assert.equal(again.state.position.task.prompt, "Question 9");
  assert.equal(again.child.get("other"), 7);
  again.state.back();
  assert.equal(again.child.get("other"), 1);
  assert.deepEqual(again.state.position.place, { task: 0, step: 1, phase: "show" });
});

test("saved extra questions may be damaged", () => {
  const { state, box } = table({ tasks: twins() });
  state.next();
  state.twin();
  for (const extras of [null, 7, [7], [{ of: 0, twin: 9 }], [{ of: 0, task: { prompt: "?" } }]]) {
    const again = table({ tasks: twins(), saved: { ...box.saved, extras } });
    assert.equal(again.state.position.extra, undefined);
    assert.equal(again.state.position.task.prompt, "Question 1");
  }
});

function four() {
  return table({ tasks: [task(1), task(2, 0), task(3), task(4)], together: 3, timer: "shown" });
}

test("several are asked and worked on together, then shown one after the other", () => {
  const { state } = four();
  const seen = [];
  do {
    const { place, open } = state.position;
    seen.push(`${place.task} ${place.phase} ${open.join("")}`.trim());
  } while (state.next() && state.position.place.task < 3);
  assert.deepEqual(seen, [
    "0 ask", "0 work", "0 show", "0 show", "0 check 0",
    // Without steps there is only an answer.
    "1 check 01", "2 show 01", "2 show 01", "2 check 012",
  ]);
  assert.deepEqual([state.position.place.phase, state.position.together], ["ask", false]);
});

test("any of those side by side is chosen, and none comes twice by itself", () => {
  const { state } = four();
  state.choose(2);
  assert.deepEqual(state.position.place, { task: 2, step: 1, phase: "show" });
  state.next();
  state.next();
  assert.deepEqual(state.position.open, [2]);
  state.next();
  assert.deepEqual([state.position.place.task, state.position.place.phase], [0, "show"]);
  // Asking and working, nothing is given away.
  state.back();
  state.back();
  state.back();
  state.back();
  assert.deepEqual([state.position.place.phase, state.position.open], ["ask", []]);
});

test("answers alone are revealed one by one, or all", () => {
  const { state } = four();
  state.turnAnswer();
  assert.deepEqual([state.position.place.phase, state.position.open], ["check", [0]]);
  state.choose(2);
  assert.deepEqual([state.position.place.phase, state.position.open], ["check", [0, 2]]);
  state.next();
  assert.deepEqual([state.position.place.phase, state.position.open], ["check", [0, 1, 2]]);
  assert.equal(state.position.turn, "question");
  const other = four().state;
  other.reveal();
  const { place, open, turn } = other.position;
  assert.deepEqual([place.phase, open, turn], ["check", [0, 1, 2], "question"]);
  // Hidden again, it is hidden.
  other.turnAnswer();
  other.turnAnswer();
  assert.deepEqual([other.position.place.phase, other.position.open], ["check", [0, 1, 2]]);
});

test("questions of a group can be taken one at a time even so", () => {
  const { state, box } = four();
  const { position, questions } = state;
  const look = () => [position.together, questions.several, position.group];
  assert.deepEqual(look(), [true, true, [0, 1, 2]]);
  state.prefer({ apart: true });
  assert.deepEqual(look(), [false, true, [0]]);
  const again = table({
    tasks: state.questions.tasks, together: 3, timer: "shown", saved: box.saved,
  });
  assert.equal(again.state.preferences.apart, true);
});

test("at the end the class counts, each number is told once, and back takes one back", () => {
  const { state, seen, round, stands } = table({ tasks: [task(1, 0)], wipe: { by: 25 } });
  state.next();
  assert.equal(state.position.turn, "wipe");
  state.next();
  assert.deepEqual(state.questions.counts, [25, 50, 75, 100, 125, 150, 175, 200, 225, 250]);
  assert.deepEqual([state.position.steps, state.position.turn], [10, "count"]);
  const stood = stands();
  while (state.position.turn === "count") {
    state.next();
  }
  assert.equal(seen.filter((what) => what === "counted").length, 10);
  assert.deepEqual(round.get("place"), { task: 0, step: 10, phase: "wipe" });
  assert.deepEqual([state.next(), state.position.turn], [false, "end"]);
  state.back();
  assert.equal(seen.filter((what) => what === "counted").length, 10);
  assert.equal(state.position.place.step, 9);
  // It is not the manipulative's turn, and there is no answer to show.
  assert.deepEqual(stands(), stood);
  assert.equal(state.turnAnswer(), false);
});

test("once more from its beginning, everything is as new", () => {
  const { state, round } = four();
  state.next();
  state.type("1:00");
  state.check({});
  state.reveal();
  state.again();
  const { place, open, turn } = state.position;
  assert.deepEqual([place, open, turn], [START, [], "start"]);
  assert.deepEqual([round.get("answers"), state.work.text, state.position.first], [[], "", true]);
});

test("without tasks there is nothing to do and nothing fails", () => {
  const { state } = table({ tasks: [] });
  assert.equal(state.position.task, undefined);
  assert.equal(state.back(), false);
  state.check({});
  state.moved();
  state.turnAnswer();
});

test("when its view ends, nothing listens to the model any more", () => {
  const { state, round, end, seen } = table({ timer: "shown" });
  assert.deepEqual(round.listened().sort(), [
    "change:answers", "change:place", "change:tasks", "change:timer",
  ]);
  end.abort();
  assert.deepEqual(round.listened(), []);
  seen.length = 0;
  round.set("tasks", [task(5)]);
  round.set("place", { task: 0, step: 1, phase: "show" });
  assert.deepEqual(seen, []);
  assert.deepEqual(state.position.place, START);
});

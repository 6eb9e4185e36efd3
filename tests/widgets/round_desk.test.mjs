// A round worked through without a screen: the desk with models that only keep what they are told.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { Desk } from "../../manipulatives/widgets/round/desk.js";
import { goBack, goOn, after, turnAnswer } from "../../manipulatives/widgets/round/flow.js";

const file = new URL("../cases/round_flow.json", import.meta.url);
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
    save_changes() {},
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

function table({ timer = "off", seconds = 60, kept = null, tasks = [task(1), task(2)] } = {}) {
  const place = START;
  const round = model({
    tasks, place, timer: {}, answers: [],
    setup: { seconds, timer, base: { arc: false, sector: false, buttons: true } },
  });
  const child = model({ dial: 0, arc: false, sector: false, buttons: true, other: 1 });
  const seen = [];
  const box = { now: 1000, kept };
  const desk = new Desk({
    model: round,
    keep: { read: () => box.kept, write: (data) => { box.kept = structuredClone(data); } },
    now: () => box.now,
    changed: (what) => seen.push(what),
  });
  desk.join(child);
  // The manipulative tells when a hand moves it.
  const move = (dial) => {
    child.set("dial", dial);
    desk.moved();
  };
  const stands = () => ["dial", "sector", "arc", "buttons"].map((name) => child.get(name));
  return { desk, round, child, box, seen, move, stands };
}

test("presses alone show every step of every task once, and back again the whole way", () => {
  const tasks = cases.steps.map((count) => ({ steps: Array(count).fill({}) }));
  let way = { place: START, trail: [] };
  const there = [];
  while (way) {
    there.push(way);
    way = goOn(way, after(way.place, tasks, { waiting: false, solved: false }));
  }
  const places = cases.steps.flatMap((count, number) => [
    { task: number, step: 0, phase: "ask" },
    ...Array.from({ length: count }, (_, step) => (
      { task: number, step: step + 1, phase: "show" }
    )),
    { task: number, step: count, phase: "check" },
  ]);
  assert.deepEqual(there.map(({ place }) => place), places);
  const back = [];
  for (way = there.at(-1); way; way = goBack(way, tasks)) {
    back.push(way.place);
  }
  assert.deepEqual(back, places.toReversed());
});

test("the answer is shown and hidden again wherever we are", () => {
  const tasks = cases.steps.map((count) => ({ steps: Array(count).fill({}) }));
  let way = { place: START, trail: [] };
  while (way) {
    const shown = turnAnswer(way, tasks);
    if (way.place.phase === "check") {
      assert.notEqual(shown.place.phase, "check");
      assert.equal(shown.place.task, way.place.task);
    } else {
      assert.equal(shown.place.phase, "check");
      assert.deepEqual(turnAnswer(shown, tasks), way);
    }
    way = goOn(way, after(way.place, tasks, { waiting: false, solved: false }));
  }
});

test("the manipulative stands as the task and the steps so far say", () => {
  const { desk, stands } = table();
  assert.deepEqual(stands(), [10, false, false, true]);
  const expected = [[11, true, false, false], [11, true, true, false], [11, true, true, false],
    [20, false, false, true]];
  for (const each of expected) {
    desk.next();
    assert.deepEqual(stands(), each);
  }
});

test("traits that the round never sets are left alone", () => {
  const { desk, child } = table();
  child.set("other", 2);
  desk.next();
  desk.next();
  assert.equal(child.get("other"), 2);
});

test("a step that changes what no task and no setting names can be taken back", () => {
  const tasks = [task(1)];
  tasks[0].steps[0].show = { other: 5 };
  const { desk, child } = table({ tasks });
  desk.next();
  assert.equal(child.get("other"), 5);
  desk.back();
  assert.equal(child.get("other"), 1);
});

test("showing in the middle of the work keeps the pupil's own hands and answer", () => {
  const { desk, move, stands } = table();
  move(17);
  desk.type("4:3");
  desk.next();
  assert.deepEqual(stands(), [11, true, false, false]);
  desk.back();
  assert.deepEqual(stands(), [17, false, false, true]);
  assert.equal(desk.work.text, "4:3");
});

test("whoever touches a question works on it; what the round sets is no one's work", () => {
  const { desk, move } = table();
  assert.equal(desk.place.phase, "ask");
  desk.moved();
  assert.equal(desk.place.phase, "ask");
  move(17);
  assert.equal(desk.place.phase, "work");
});

test("a wrong answer stays to be changed, a right one leads to the next question", () => {
  const { desk, round } = table();
  desk.type("1:30");
  desk.check({});
  assert.equal(desk.work.verdict.say, "Look.");
  assert.equal(desk.turn, "first");
  desk.type("1:00");
  assert.equal(desk.work.verdict.say, "Look.");
  desk.check({});
  assert.equal(desk.solved, true);
  assert.equal(desk.turn, "question");
  desk.type("7:77");
  desk.check({});
  assert.deepEqual(round.get("answers"), [
    { task: 0, given: "1:00", tries: 2, right: true, rule: "late" },
  ]);
  desk.next();
  assert.deepEqual(desk.place, { task: 1, step: 0, phase: "ask" });
  assert.equal(desk.work.text, "");
  desk.back();
  assert.deepEqual([desk.place.task, desk.work.text, desk.work.verdict.right], [0, "1:00", true]);
});

test("the steps of a solved task can still be seen", () => {
  const { desk } = table();
  desk.type("1:00");
  desk.check({});
  desk.explain();
  assert.deepEqual(desk.place, { task: 0, step: 1, phase: "show" });
  desk.back();
  assert.equal(desk.place.phase, "work");
});

test("that an answer is missing is said until there is one", () => {
  const { desk, round } = table();
  desk.check({});
  assert.match(desk.work.verdict.say, /first/);
  desk.type("1");
  assert.equal(desk.work.verdict, null);
  assert.deepEqual(round.get("answers"), []);
});

test("the timer starts with the work, rests while the answer is shown, and goes on", () => {
  const { desk, box } = table({ timer: "shown" });
  assert.equal(desk.turn, "start");
  desk.next();
  assert.equal(desk.place.phase, "work");
  box.now += 10_000;
  desk.next();
  box.now += 500_000;
  assert.equal(desk.left, 50_000);
  desk.back();
  box.now += 5_000;
  assert.equal(desk.left, 45_000);
});

test("paused by hand, it waits for a hand", () => {
  const { desk, box } = table({ timer: "shown" });
  desk.next();
  desk.turnTimer();
  desk.next();
  desk.back();
  box.now += 10_000;
  assert.equal(desk.left, 60_000);
  desk.turnTimer();
  box.now += 10_000;
  assert.equal(desk.left, 50_000);
});

test("running out is told once and loses nothing", () => {
  const { desk, box, seen } = table({ timer: "shown" });
  desk.next();
  desk.type("1:0");
  box.now += 61_000;
  desk.tick();
  desk.tick();
  assert.equal(seen.filter((what) => what === "out").length, 1);
  assert.deepEqual([desk.place.phase, desk.work.text], ["work", "1:0"]);
  desk.type("1:00");
  desk.check({});
  assert.equal(desk.solved, true);
  // With no time left the next question needs no start.
  desk.next();
  assert.equal(desk.turn, "first");
});

test("a round without a timer has none to start", () => {
  assert.equal(table().desk.turnTimer(), false);
  assert.equal(table({ timer: "shown", seconds: 0 }).desk.turnTimer(), false);
});

test("turned off in the middle, the timer can be called back", () => {
  const { desk } = table({ timer: "shown" });
  desk.press("off");
  assert.equal(desk.turn, "first");
  assert.equal(desk.turnTimer(), true);
  assert.deepEqual([desk.timer.mode, desk.place.phase], ["shown", "work"]);
});

test("taken up again, everything is where it was", () => {
  const first = table({ timer: "shown" });
  first.desk.next();
  first.move(17);
  first.desk.type("4:3");
  first.box.now += 20_000;
  first.desk.save();
  const again = table({ timer: "shown", kept: first.box.kept });
  assert.equal(again.desk.place.phase, "work");
  assert.equal(again.desk.work.text, "4:3");
  assert.deepEqual(again.stands(), [17, false, false, true]);
  assert.equal(again.desk.left, 40_000);
  again.box.now += 1_000;
  assert.equal(again.desk.left, 39_000);
  again.desk.back();
  assert.deepEqual(again.desk.place, START);
});

test("what was kept for other questions, or is damaged, is left aside", () => {
  const first = table();
  first.desk.next();
  first.desk.save();
  const { kept } = first.box;
  assert.equal(table({ kept }).desk.place.phase, "show");
  const others = [task(7), task(2)];
  const damaged = [null, 7, "x", [], {}, { ...kept, timer: null }, { ...kept, trail: "far" }];
  for (const each of damaged) {
    assert.deepEqual(table({ kept: each }).desk.place, START);
  }
  assert.deepEqual(table({ kept, tasks: others }).desk.place, START);
  assert.deepEqual(table({ kept, timer: "shown" }).desk.place, START);
  const place = { task: 99, phase: "nowhere" };
  for (const works of [null, 7, { 1: null }, { 1: { text: 7 } }]) {
    const { desk } = table({ kept: { ...kept, place, works, answers: null } });
    assert.deepEqual(desk.place, { task: 1, step: 0, phase: "ask" });
    assert.deepEqual([desk.work.text, desk.solved], ["", false]);
  }
});

test("sent elsewhere from outside, it goes there and can come back", () => {
  const { desk, round, stands } = table();
  desk.next();
  round.set("place", { task: 1, step: 1, phase: "show" });
  assert.deepEqual(stands(), [21, true, false, false]);
  desk.back();
  assert.deepEqual(desk.place, { task: 0, step: 1, phase: "show" });
});

test("given other tasks, it begins with them", () => {
  const { desk, round, stands } = table();
  desk.type("1:0");
  round.set("tasks", [task(5)]);
  assert.deepEqual(stands(), [50, false, false, true]);
  assert.equal(desk.work.text, "");
});

test("without tasks there is nothing to do and nothing fails", () => {
  const { desk } = table({ tasks: [] });
  assert.equal(desk.task, undefined);
  assert.equal(desk.back(), false);
  desk.check({});
  desk.moved();
  desk.turnAnswer();
});

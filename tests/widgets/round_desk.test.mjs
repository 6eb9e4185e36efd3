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

function table({
  timer = "off", seconds = 60, kept = null, tasks = [task(1), task(2)], together = 1, wipe = null,
} = {}) {
  const place = START;
  const base = { arc: false, sector: false, buttons: true };
  const round = model({
    tasks, place, timer: {}, answers: [], setup: { seconds, timer, base, together, wipe },
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

function course() {
  const tasks = cases.steps.map((count) => ({ steps: Array(count).fill({}) }));
  return { tasks, together: 1, count: 2 };
}

test("presses alone show every step of every task once, and back again the whole way", () => {
  let way = { place: START, trail: [] };
  const there = [];
  while (way) {
    there.push(way);
    way = goOn(way, after(way.place, course(), { waiting: false, solved: false }));
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
  for (way = there.at(-1); way; way = goBack(way, course())) {
    back.push(way.place);
  }
  assert.deepEqual(back, places.toReversed());
});

test("the answer is shown and hidden again wherever we are", () => {
  let way = { place: START, trail: [] };
  while (way) {
    const shown = turnAnswer(way, course(), cases.steps[way.place.task]);
    if (way.place.phase === "wipe") {
      assert.equal(shown, null);
    } else if (way.place.phase === "check") {
      assert.notEqual(shown.place.phase, "check");
      assert.equal(shown.place.task, way.place.task);
    } else {
      assert.equal(shown.place.phase, "check");
      assert.deepEqual(turnAnswer(shown, course(), shown.place.step), way);
    }
    way = goOn(way, after(way.place, course(), { waiting: false, solved: false }));
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

function twins() {
  return [{ ...task(1), twins: [task(3), task(4, 1)] }, task(2)];
}

test("another like this is worked in the place of its question, and back", () => {
  const { desk, round, stands } = table({ tasks: twins() });
  desk.next();
  assert.equal(desk.twinned, true);
  desk.twin();
  assert.deepEqual([desk.task.prompt, desk.place.phase], ["Question 3", "ask"]);
  // To all others the round stands where it was left.
  assert.deepEqual(round.get("place"), { task: 0, step: 1, phase: "show" });
  assert.deepEqual(stands(), [30, false, false, true]);
  const seen = [];
  while (desk.aside) {
    seen.push([desk.place.phase, desk.turn]);
    desk.next();
  }
  assert.deepEqual(seen, [
    ["ask", "first"], ["show", "step"], ["show", "answer"], ["check", "home"],
  ]);
  assert.deepEqual(desk.place, { task: 0, step: 1, phase: "show" });
  assert.deepEqual(stands(), [11, true, false, false]);
});

test("twins come one after the other, and after the last the first again", () => {
  const { desk } = table({ tasks: twins() });
  desk.next();
  const prompts = Array.from({ length: 3 }, () => {
    desk.twin();
    return desk.task.prompt;
  });
  assert.deepEqual(prompts, ["Question 3", "Question 4", "Question 3"]);
  desk.back();
  assert.equal(desk.task.prompt, "Question 4");
  desk.back();
  desk.back();
  assert.equal(desk.aside, undefined);
  desk.next();
  desk.next();
  desk.next();
  assert.deepEqual([desk.place.task, desk.twinned], [1, false]);
  assert.equal(desk.twin(), false);
});

test("what is answered beside the round is judged and not written down", () => {
  const { desk, round } = table({ tasks: twins() });
  desk.next();
  desk.twin();
  desk.type("3:00");
  desk.check({});
  assert.deepEqual([desk.solved, desk.turn], [true, "home"]);
  assert.deepEqual(round.get("answers"), []);
  desk.next();
  assert.deepEqual([desk.solved, desk.place.phase], [false, "show"]);
});

test("numbers of the teacher's own are asked beside the round", () => {
  const { desk, box } = table();
  desk.next();
  const own = { ...task(9), start: { dial: 90, other: 7 } };
  desk.put(own);
  assert.equal(desk.task.prompt, "Question 9");
  // Loaded anew, it is still there, and so is the way back.
  const again = table({ kept: box.kept });
  assert.equal(again.desk.task.prompt, "Question 9");
  assert.equal(again.child.get("other"), 7);
  again.desk.back();
  assert.equal(again.child.get("other"), 1);
  assert.deepEqual(again.desk.place, { task: 0, step: 1, phase: "show" });
});

test("what was kept of questions beside the round may be damaged", () => {
  const { desk, box } = table({ tasks: twins() });
  desk.next();
  desk.twin();
  for (const asides of [null, 7, [7], [{ of: 0, twin: 9 }], [{ of: 0, task: { prompt: "?" } }]]) {
    const again = table({ tasks: twins(), kept: { ...box.kept, asides } });
    assert.equal(again.desk.aside, undefined);
    assert.equal(again.desk.task.prompt, "Question 1");
  }
});

function four() {
  return table({ tasks: [task(1), task(2, 0), task(3), task(4)], together: 3, timer: "shown" });
}

test("several are asked and worked on together, then shown one after the other", () => {
  const { desk } = four();
  const seen = [];
  do {
    seen.push(`${desk.place.task} ${desk.place.phase} ${desk.open.join("")}`.trim());
  } while (desk.next() && desk.place.task < 3);
  assert.deepEqual(seen, [
    "0 ask", "0 work", "0 show", "0 show", "0 check 0",
    // Without steps there is only an answer.
    "1 check 01", "2 show 01", "2 show 01", "2 check 012",
  ]);
  assert.deepEqual([desk.place.phase, desk.together], ["ask", false]);
});

test("any of those side by side is chosen, and none comes twice by itself", () => {
  const { desk } = four();
  desk.choose(2);
  assert.deepEqual(desk.place, { task: 2, step: 1, phase: "show" });
  desk.next();
  desk.next();
  assert.deepEqual(desk.open, [2]);
  desk.next();
  assert.deepEqual([desk.place.task, desk.place.phase], [0, "show"]);
  // Asking and working, nothing is given away.
  desk.back();
  desk.back();
  desk.back();
  desk.back();
  assert.deepEqual([desk.place.phase, desk.open], ["ask", []]);
});

test("answers alone are revealed one by one, or all", () => {
  const { desk } = four();
  desk.turnAnswer();
  assert.deepEqual([desk.place.phase, desk.open], ["check", [0]]);
  desk.choose(2);
  assert.deepEqual([desk.place.phase, desk.open], ["check", [0, 2]]);
  desk.next();
  assert.deepEqual([desk.place.phase, desk.open], ["check", [0, 1, 2]]);
  assert.equal(desk.turn, "question");
  const other = four().desk;
  other.reveal();
  assert.deepEqual([other.place.phase, other.open, other.turn], ["check", [0, 1, 2], "question"]);
  // Hidden again, it is hidden.
  other.turnAnswer();
  other.turnAnswer();
  assert.deepEqual([other.place.phase, other.open], ["check", [0, 1, 2]]);
});

test("questions of a group can be taken one at a time even so", () => {
  const { desk, box } = four();
  assert.deepEqual([desk.together, desk.several, desk.group], [true, true, [0, 1, 2]]);
  desk.like({ apart: true });
  assert.deepEqual([desk.together, desk.several, desk.group], [false, true, [0]]);
  const again = table({
    tasks: desk.tasks, together: 3, timer: "shown", kept: box.kept,
  });
  assert.equal(again.desk.taste.apart, true);
});

test("at the end the class counts, each number is told once, and back takes one back", () => {
  const { desk, seen, round, stands } = table({ tasks: [task(1, 0)], wipe: { by: 25 } });
  desk.next();
  assert.equal(desk.turn, "wipe");
  desk.next();
  assert.deepEqual(desk.counts, [25, 50, 75, 100, 125, 150, 175, 200, 225, 250]);
  assert.deepEqual([desk.steps, desk.turn], [10, "count"]);
  const stood = stands();
  while (desk.turn === "count") {
    desk.next();
  }
  assert.equal(seen.filter((what) => what === "counted").length, 10);
  assert.deepEqual(round.get("place"), { task: 0, step: 10, phase: "wipe" });
  assert.deepEqual([desk.next(), desk.turn], [false, "end"]);
  desk.back();
  assert.equal(seen.filter((what) => what === "counted").length, 10);
  assert.equal(desk.place.step, 9);
  // It is not the manipulative's turn, and there is no answer to show.
  assert.deepEqual(stands(), stood);
  assert.equal(desk.turnAnswer(), false);
});

test("once more from its beginning, everything is as new", () => {
  const { desk, round } = four();
  desk.next();
  desk.type("1:00");
  desk.check({});
  desk.reveal();
  desk.again();
  assert.deepEqual([desk.place, desk.open, desk.turn], [START, [], "start"]);
  assert.deepEqual([round.get("answers"), desk.work.text, desk.first], [[], "", true]);
});

test("without tasks there is nothing to do and nothing fails", () => {
  const { desk } = table({ tasks: [] });
  assert.equal(desk.task, undefined);
  assert.equal(desk.back(), false);
  desk.check({});
  desk.moved();
  desk.turnAnswer();
});

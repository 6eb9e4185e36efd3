// What one pupil does with a round: tries, hints, steps and twins, as plain data.
import assert from "node:assert/strict";
import { test } from "node:test";
import { figuresOf } from "../../../manipulatives/widgets/round/pupil/state/figures.js";
import {
  answered, exampleOf, goalFacts, hinted, isDone, isSpent, itemsIn, itemsOf, offered, questionOf,
  resultOf,
} from "../../../manipulatives/widgets/round/pupil/state/items.js";

const RIGHT = { counts: true, right: true, say: "Yes, it.", rule: null, given: "4:00" };
const WRONG = { counts: true, right: false, say: "Look.", rule: "next_hour", given: "5:00" };
const NONE = { counts: false, right: false, say: "Write first.", rule: null, given: null };

function question(answer, { by = "keypad", steps = 3, twins = [] } = {}) {
  return {
    prompt: `Which is ${answer}?`,
    answer,
    spoken: "it",
    ask: by === "keypad" ? { by, form: "time" } : { by },
    goal: ["=", "answer", answer],
    start: {},
    steps: Array.from({ length: steps }, (_, step) => ({ say: `${step}`, class: "", show: {} })),
    mistakes: [],
    twins,
  };
}

const TASKS = ["4:00", "5:00"].map((answer) => question(answer, {
  twins: [answer, "6:00", "7:00"].map((other) => question(other)),
}));

test("a round opens with an example, once for each way of answering", () => {
  assert.deepEqual(itemsOf(TASKS).map(({ stage }) => stage), ["watch", "try"]);
  const twins = [question("9:00", { by: "choice" })];
  const made = question("8:00", { by: "manipulative", twins });
  // None of the twins is answered in that way.
  assert.deepEqual(itemsOf([...TASKS, made]).map(({ stage }) => stage), ["watch", "try", "try"]);
});

test("an example never gives the answer away", () => {
  assert.equal(exampleOf(TASKS, 0).answer, "6:00");
  const alike = [question("4:00", { twins: [question("4:00")] })];
  assert.equal(exampleOf(alike, 0), null);
});

test("where one of few answers is chosen, an example may have the same", () => {
  const twins = [question("yes", { by: "choice" })];
  assert.equal(exampleOf([question("yes", { by: "choice", twins })], 0), twins[0]);
});

test("what is no answer is no try", () => {
  const [item] = itemsOf(TASKS);
  const after = answered(item, TASKS[0], NONE);
  assert.equal(after.say, NONE.say);
  assert.deepEqual(after.given, []);
  assert.equal(resultOf(after, TASKS[0], { skill: "time", options: {} }), null);
});

test("after two wrong answers the tries are used up, and a twin is offered", () => {
  let items = itemsOf(TASKS);
  let item = answered(items[0], TASKS[0], WRONG);
  assert.ok(!isSpent(item));
  item = answered(item, TASKS[0], WRONG);
  assert.ok(isSpent(item) && !isDone(item, TASKS[0]));
  item = { ...item, stage: "steps", step: 3 };
  assert.ok(isDone(item, TASKS[0]));
  items = [item, answered(items[1], TASKS[1], RIGHT)];
  const [twin, ...more] = offered(items, TASKS);
  assert.deepEqual(more, []);
  assert.equal(twin.stage, "offer");
  assert.equal(questionOf(TASKS, twin).answer, "7:00");
  // A twin that is not solved is not followed by another one.
  assert.equal(offered([...items, { ...twin, given: ["1", "2"] }], TASKS).length, 1);
});

test("a right answer after a wrong one keeps the mistake and ends the question", () => {
  const item = answered(answered(itemsOf(TASKS)[0], TASKS[0], WRONG), TASKS[0], RIGHT);
  assert.ok(isDone(item, TASKS[0]));
  const setup = { skill: "time.read_hour", options: { answer: "choice" } };
  const task = { ...TASKS[0], start: { snap: 5 }, goal: { fact: "time" } };
  assert.deepEqual(resultOf(item, task, setup), {
    skill: "time.read_hour",
    options: { answer: "choice" },
    asked: { start: { snap: 5 }, goal: { fact: "time" }, answer: TASKS[0].answer },
    prompt: "Which is 4:00?",
    given: ["5:00", "4:00"],
    tries: 2,
    right: true,
    rule: "next_hour",
    hints: 0,
    twin: false,
  });
});

test("hints go up to the step before the last, which would be the answer", () => {
  let item = { ...itemsOf(TASKS)[0], stage: "try" };
  for (const hints of [1, 2]) {
    item = hinted(item, TASKS[0]);
    assert.deepEqual([item.hints, item.stage, item.peek], [hints, "try", false]);
  }
  item = hinted(item, TASKS[0]);
  assert.deepEqual([item.hints, item.stage, item.step], [3, "steps", 1]);
});

test("where something is made, a hint is only looked at", () => {
  const made = question("8:00", { by: "manipulative" });
  const item = { ...itemsOf([made])[0], own: { dial: 3 } };
  assert.deepEqual(hinted(item, made), { ...item, hints: 1, peek: true });
});

test("what was not moved since is not another try", () => {
  const goal = ["and", ["=", "total", 38], ["not", ["=", "kinds", ""]]];
  const task = { ...question("38"), goal };
  const given = { total: 35, kinds: "25 10", count: 2 };
  let item = answered(itemsOf([task])[0], task, { ...WRONG, given });
  assert.deepEqual(item.given, [{ total: 35, kinds: "25 10" }]);
  item = answered(item, task, { ...WRONG, given: { ...given, count: 3 } });
  assert.equal(item.given.length, 1);
  assert.deepEqual(goalFacts(task.goal, {}), { total: null, kinds: null });
});

test("what was saved is used only if it is about these questions", () => {
  const items = itemsOf(TASKS);
  const saved = () => JSON.parse(JSON.stringify([...items, ...offered(items, TASKS)]));
  assert.deepEqual(itemsIn(saved(), TASKS), saved());
  for (const spoil of [
    () => null,
    () => [],
    () => saved().slice(0, 1),
    () => saved().reverse(),
    () => saved().map((item) => ({ ...item, of: 9 })),
    () => saved().map((item) => ({ ...item, twin: 7 })),
    () => saved().map((item) => ({ ...item, stage: "over" })),
    () => saved().map((item) => ({ ...item, given: "4:00" })),
    () => [...saved(), null],
  ]) {
    assert.equal(itemsIn(spoil(), TASKS), null);
  }
});

test("of a question its numbers and signs are understood without words", () => {
  assert.equal(figuresOf("The bun costs 4\u00a2. Pay it."), "4\u00a2");
  assert.equal(figuresOf("58 - 37"), "58 \u2212 37");
  assert.equal(figuresOf("Which sign belongs here? 1 _ 15."), "1 _ 15");
  assert.equal(figuresOf("What comes next? 5, 10, 15."), "5, 10, 15");
  assert.equal(figuresOf("The ferry leaves at 10:15. Set the clock."), "10:15");
  assert.equal(figuresOf("What time does the bell tower show?"), "");
});

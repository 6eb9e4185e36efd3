// The state of a manipulative and the way back, with a model that tells as hosts do.
import assert from "node:assert/strict";
import { test } from "node:test";
import { makeKept } from "../../manipulatives/widgets/shared/state/undoable.js";

function desk(first) {
  const listeners = [];
  const state = { tray: first };
  const told = [];
  const model = {
    get: (name) => state[name],
    set(name, value) {
      told.push(["set", value]);
      state[name] = value;
      listeners.forEach((listener) => listener());
    },
    save_changes: () => told.push(["save"]),
    on: (event, listener) => event === "change:tray" && listeners.push(listener),
  };
  const root = new EventTarget();
  root.addEventListener("kit:change", ({ bubbles }) => told.push(["change", bubbles]));
  const end = new AbortController();
  const kept = makeKept(model, "tray", root, (begun) => told.push(["paint", begun]), end);
  const outside = (value) => {
    state.tray = value;
    listeners.forEach((listener) => listener());
  };
  return { kept, told, state, outside, end };
}

test("a step is seen before it is set, saved and told, each once", () => {
  const { kept, told, state } = desk([]);
  assert.equal(kept.act([1]), true);
  assert.deepEqual(told, [["paint", false], ["set", [1]], ["save"], ["change", true]]);
  assert.deepEqual(state.tray, [1]);
});

test("a step that changes nothing is none", () => {
  const { kept, told } = desk([1]);
  assert.equal(kept.act([1]), false);
  assert.deepEqual(told, []);
  assert.deepEqual(kept.uses(), [false, false]);
});

test("all steps are taken back, one after the other", () => {
  const { kept } = desk([]);
  for (let step = 1; step <= 500; step += 1) {
    kept.act([step]);
  }
  for (let step = 499; step >= 1; step -= 1) {
    assert.equal(kept.undo(), true);
    assert.deepEqual(kept.now(), [step]);
  }
  kept.undo();
  assert.deepEqual(kept.now(), []);
  assert.equal(kept.undo(), false);
});

test("reset goes to the beginning and can be undone", () => {
  const { kept } = desk([0]);
  kept.act([1]);
  kept.act([2]);
  assert.equal(kept.reset(), true);
  assert.deepEqual(kept.now(), [0]);
  assert.deepEqual(kept.uses(), [true, false]);
  kept.undo();
  assert.deepEqual(kept.now(), [2]);
  assert.deepEqual(kept.uses(), [true, true]);
});

test("a state from outside is a new beginning", () => {
  const { kept, told, outside } = desk([0]);
  kept.act([1]);
  told.length = 0;
  outside([5]);
  assert.deepEqual(told, [["paint", true], ["change", true]]);
  assert.deepEqual(kept.now(), [5]);
  assert.deepEqual(kept.uses(), [false, false]);
  outside([5]);
  assert.equal(told.length, 2);
});

test("a view that has ended hears of nothing", () => {
  const { kept, told, outside, end } = desk([0]);
  end.abort();
  outside([5]);
  assert.deepEqual(told, []);
  assert.deepEqual(kept.now(), [0]);
});

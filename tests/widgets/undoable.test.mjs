// The state of a manipulative that can be undone, with a model that tells as hosts do.
import assert from "node:assert/strict";
import { test } from "node:test";
import { makeUndoable } from "../../manipulatives/widgets/shared/state/undoable.js";

function start(first) {
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
    off: (event, listener) => {
      listeners.splice(listeners.indexOf(listener), 1);
    },
  };
  const root = new EventTarget();
  root.addEventListener("kit:change", ({ bubbles }) => told.push(["change", bubbles]));
  const end = new AbortController();
  const undoable = makeUndoable(model, "tray", root, (begun) => told.push(["paint", begun]), end);
  const outside = (value) => {
    state.tray = value;
    listeners.forEach((listener) => listener());
  };
  return { undoable, told, state, outside, end, listeners };
}

test("a step is seen before it is set, saved and told, each once", () => {
  const { undoable, told, state } = start([]);
  assert.equal(undoable.act([1]), true);
  assert.deepEqual(told, [["paint", false], ["set", [1]], ["save"], ["change", true]]);
  assert.deepEqual(state.tray, [1]);
});

test("a step that changes nothing is none", () => {
  const { undoable, told } = start([1]);
  assert.equal(undoable.act([1]), false);
  assert.deepEqual(told, []);
  assert.deepEqual(undoable.uses(), [false, false]);
});

test("all steps are taken back, one after the other", () => {
  const { undoable } = start([]);
  for (let step = 1; step <= 500; step += 1) {
    undoable.act([step]);
  }
  for (let step = 499; step >= 1; step -= 1) {
    assert.equal(undoable.undo(), true);
    assert.deepEqual(undoable.now(), [step]);
  }
  undoable.undo();
  assert.deepEqual(undoable.now(), []);
  assert.equal(undoable.undo(), false);
});

test("reset goes to the beginning and can be undone", () => {
  const { undoable } = start([0]);
  undoable.act([1]);
  undoable.act([2]);
  assert.equal(undoable.reset(), true);
  assert.deepEqual(undoable.now(), [0]);
  assert.deepEqual(undoable.uses(), [true, false]);
  undoable.undo();
  assert.deepEqual(undoable.now(), [2]);
  assert.deepEqual(undoable.uses(), [true, true]);
});

test("a state from outside is a new beginning", () => {
  const { undoable, told, outside } = start([0]);
  undoable.act([1]);
  told.length = 0;
  outside([5]);
  assert.deepEqual(told, [["paint", true], ["change", true]]);
  assert.deepEqual(undoable.now(), [5]);
  assert.deepEqual(undoable.uses(), [false, false]);
  outside([5]);
  assert.equal(told.length, 2);
});

test("a view that has ended hears of nothing", () => {
  const { undoable, told, outside, end, listeners } = start([0]);
  end.abort();
  outside([5]);
  assert.deepEqual(told, []);
  assert.deepEqual(undoable.now(), [0]);
  assert.equal(listeners.length, 0);
});

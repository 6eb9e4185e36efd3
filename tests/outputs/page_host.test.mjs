// The host without a browser: models, how a page stores them, and which listeners are called.
import assert from "node:assert/strict";
import { test } from "node:test";
import { openHost } from "../../manipulatives/outputs/page/host/host.js";
import { Model } from "../../manipulatives/outputs/page/host/model.js";
import { alike } from "../../manipulatives/widgets/shared/state/alike.js";
import { referenceTarget, traits } from "../../manipulatives/outputs/page/host/saved.js";

/** Listen to a model and return its events, in order. */
function recordEvents(model, ...names) {
  const events = [];
  for (const name of names) {
    model.on(name, () => events.push(name));
  }
  return events;
}

test("setting a trait dispatches its own event once, then one change event", () => {
  const model = new Model({ hour: 4, minute: 35 });
  const events = recordEvents(model, "change", "change:minute", "change:hour");
  model.set("hour", 5);
  assert.deepEqual(events, ["change:hour", "change"]);
  assert.equal(model.get("hour"), 5);
});

test("all of several traits are set before the first event", () => {
  const model = new Model({ hour: 4, minute: 35 });
  const seen = [];
  model.on("change:hour change:minute", () => seen.push([model.get("hour"), model.get("minute")]));
  const events = recordEvents(model, "change");
  model.set({ hour: 5, minute: 0 });
  assert.deepEqual(seen, [[5, 0], [5, 0]]);
  assert.deepEqual(events, ["change"]);
});

test("an equal value is no change, however deep", () => {
  const model = new Model({ dial: { hour: 275, marks: [1, { two: null }] } });
  const events = recordEvents(model, "change", "change:dial");
  model.set("dial", { marks: [1, { two: null }], hour: 275 });
  assert.deepEqual(events, []);
  model.set("dial", { marks: [1, { two: 0 }], hour: 275 });
  assert.deepEqual(events, ["change:dial", "change"]);
});

test("a trait set by a listener dispatches at once, and the change event comes last", () => {
  const model = new Model({ hour: 4, minute: 35 });
  const events = recordEvents(model, "change", "change:minute");
  model.on("change:hour", () => model.set("minute", 0));
  model.set("hour", 5);
  assert.deepEqual(events, ["change:minute", "change"]);
  model.set("minute", 1);
  assert.deepEqual(events, ["change:minute", "change", "change:minute", "change"]);
});

test("a listener gets the model and the value", () => {
  const model = new Model({ hour: 4 });
  const given = [];
  model.on("change:hour", (...details) => given.push(...details));
  model.set("hour", 5);
  assert.equal(given[0].get("hour"), 5);
  assert.equal(given[1], 5);
});

test("listeners are removed by name, by callback, by owner, or all together", () => {
  const owners = [{}, {}];
  const left = (off) => {
    const model = new Model({ hour: 4, minute: 35 });
    const events = [];
    const one = () => events.push("one");
    const two = () => events.push("two");
    model.on("change:hour", one, owners[0]);
    model.on("change:minute", one, owners[0]);
    model.on("change:hour", two, owners[1]);
    model.off(...off({ one, two }));
    model.set({ hour: 5, minute: 0 });
    return events;
  };
  assert.deepEqual(left(() => ["change:hour"]), ["one"]);
  assert.deepEqual(left(({ one }) => [null, one]), ["two"]);
  assert.deepEqual(left(({ one }) => ["change:minute", one]), ["one", "two"]);
  assert.deepEqual(left(() => [null, null, owners[1]]), ["one", "one"]);
  assert.deepEqual(left(() => []), []);
});

test("values that differ in JSON are not equal", () => {
  for (const [one, other] of [[1, true], [0, false], ["1", 1], [null, undefined], [[], {}],
    [{ a: undefined }, {}], [[1, 2], [2, 1]], [null, {}], [{ a: 1 }, { b: 1 }]]) {
    assert.equal(alike(one, other), false, `${JSON.stringify(one)} and ${JSON.stringify(other)}`);
  }
  assert.equal(alike([{ a: [NaN] }], [{ a: [NaN] }]), true);
});

const SAVED = {
  kinds: {
    k1: { name: "Clock", code: "clock", usual: { dial: { hour: 0 }, list: [1], loud: true } },
  },
  models: {
    m1: { kind: "k1" },
    m2: { kind: "k1", own: { loud: false } },
    m3: { kind: "k1", own: { list: [{}] }, bytes: [{ path: ["list", 0, "sound"], data: "AP8=" }] },
  },
};

test("a widget has the usual traits and its own, and shares them with none", () => {
  assert.deepEqual(traits(SAVED, "m2"), { dial: { hour: 0 }, list: [1], loud: false });
  traits(SAVED, "m1").dial.hour = 99;
  assert.equal(traits(SAVED, "m2").dial.hour, 0);
});

test("binary values are put back at their path", () => {
  const { sound } = traits(SAVED, "m3").list[0];
  assert.deepEqual([...new Uint8Array(sound.buffer)], [0, 255]);
});

test("a reference has one of two forms", () => {
  assert.equal(referenceTarget("anywidget:m2"), "m2");
  assert.equal(referenceTarget("IPY_MODEL_m2"), "m2");
  for (const wrong of ["m2", "anywidget:", "", null, undefined, 7, { id: "m2" }]) {
    assert.throws(() => referenceTarget(wrong), /is no reference to a widget/);
  }
});

/** A host with one kind of widget, and a list of how often its code was loaded. */
function hosted(made, saved = SAVED) {
  const loads = [];
  const page = { head: { append() {} }, createElement: () => ({}) };
  const load = async (code) => {
    loads.push(code);
    return { default: made };
  };
  return { loads, ...openHost(saved, load, page) };
}

test("code is loaded once per kind, and each widget initializes once", async () => {
  const initialized = [];
  const { show, loads } = hosted({
    initialize: ({ model }) => initialized.push(model.get("loud")),
    render() {},
  });
  await show("m1", { el: {} });
  await show("m1", { el: {} });
  assert.deepEqual(loads, ["clock"]);
  assert.deepEqual(initialized, [true, false, true]);
});

test("when a view ends its own listeners are removed, and no others", async () => {
  const events = [];
  const { show, model } = hosted({
    render({ model: own, el }) {
      own.on("change:loud", () => events.push(el.name));
      return () => events.push(`cleaned ${el.name}`);
    },
  });
  const short = new AbortController();
  await show("m1", { el: { name: "short" }, signal: short.signal });
  await show("m1", { el: { name: "long" } });
  model("m1").set("loud", false);
  short.abort();
  model("m1").set("loud", true);
  assert.deepEqual(events, ["short", "long", "cleaned short", "long"]);
});

test("a view that is aborted while it renders is cleaned up at once", async () => {
  const events = [];
  const short = new AbortController();
  const { show } = hosted({
    async render() {
      short.abort();
      return () => events.push("cleaned");
    },
  });
  await show("m1", { el: {}, signal: short.signal });
  assert.deepEqual(events, ["cleaned"]);
});

test("a widget cannot remove the listeners of others", async () => {
  const events = [];
  const { show, model } = hosted({
    render({ model: own, el }) {
      own.off();
      own.off("change:loud");
      own.on("change:loud", () => events.push(el.name));
    },
  });
  await show("m1", { el: { name: "first" } });
  await show("m1", { el: { name: "second" } });
  model("m1").set("loud", false);
  assert.deepEqual(events, ["first", "second"]);
});

test("sending does nothing without a kernel, and invoking is rejected", async () => {
  let asked;
  const { show } = hosted({
    render({ model, experimental }) {
      model.set("loud", false);
      assert.equal(model.save_changes(), undefined);
      assert.equal(model.send({ hello: 1 }), undefined);
      asked = experimental.invoke("name", {});
    },
  });
  await show("m1", { el: {} });
  await assert.rejects(asked, /no kernel/);
});

test("the error about a missing widget names it", async () => {
  let wrong;
  const { show } = hosted({
    render({ host }) {
      wrong = host.getModel("anywidget:m99");
    },
  });
  await show("m1", { el: {} });
  await assert.rejects(wrong, /carries no widget m99/);
  await assert.rejects(show("m99", { el: {} }), /carries no widget m99/);
});

test("the older widget_manager.get_model works too", async () => {
  let found;
  const { show } = hosted({
    async render({ model }) {
      found = (await model.widget_manager.get_model("m2")).get("loud");
    },
  });
  await show("m1", { el: {} });
  assert.equal(found, false);
});

test("a widget that never initializes fails after a timeout", async (context) => {
  context.mock.timers.enable({ apis: ["setTimeout"] });
  const { show } = hosted({ initialize: () => new Promise(() => {}), render() {} });
  const shown = assert.rejects(show("m1", { el: {} }), /Clock was not ready in time/);
  context.mock.timers.tick(10_000);
  await shown;
});

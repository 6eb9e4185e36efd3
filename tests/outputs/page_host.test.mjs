// The host's own logic, without a browser: models, what a page keeps of them, and who hears what.
import assert from "node:assert/strict";
import { test } from "node:test";
import { openHost } from "../../manipulatives/outputs/page/host/host.js";
import { Model } from "../../manipulatives/outputs/page/host/model.js";
import { alike } from "../../manipulatives/widgets/shared/state/alike.js";
import { referred, traits } from "../../manipulatives/outputs/page/host/saved.js";

/** Everything that a model tells, in order. */
function heard(model, ...names) {
  const told = [];
  for (const name of names) {
    model.on(name, () => told.push(name));
  }
  return told;
}

test("a trait that is set is told once, and the summary after it", () => {
  const model = new Model({ hour: 4, minute: 35 });
  const told = heard(model, "change", "change:minute", "change:hour");
  model.set("hour", 5);
  assert.deepEqual(told, ["change:hour", "change"]);
  assert.equal(model.get("hour"), 5);
});

test("several traits are all there before the first is told", () => {
  const model = new Model({ hour: 4, minute: 35 });
  const seen = [];
  model.on("change:hour change:minute", () => seen.push([model.get("hour"), model.get("minute")]));
  const told = heard(model, "change");
  model.set({ hour: 5, minute: 0 });
  assert.deepEqual(seen, [[5, 0], [5, 0]]);
  assert.deepEqual(told, ["change"]);
});

test("what is alike is no change, however deep", () => {
  const model = new Model({ dial: { hour: 275, marks: [1, { two: null }] } });
  const told = heard(model, "change", "change:dial");
  model.set("dial", { marks: [1, { two: null }], hour: 275 });
  assert.deepEqual(told, []);
  model.set("dial", { marks: [1, { two: 0 }], hour: 275 });
  assert.deepEqual(told, ["change:dial", "change"]);
});

test("a listener that sets something is told at once, and the summary comes last", () => {
  const model = new Model({ hour: 4, minute: 35 });
  const told = heard(model, "change", "change:minute");
  model.on("change:hour", () => model.set("minute", 0));
  model.set("hour", 5);
  assert.deepEqual(told, ["change:minute", "change"]);
  model.set("minute", 1);
  assert.deepEqual(told, ["change:minute", "change", "change:minute", "change"]);
});

test("a listener gets the model and the value", () => {
  const model = new Model({ hour: 4 });
  const given = [];
  model.on("change:hour", (...details) => given.push(...details));
  model.set("hour", 5);
  assert.equal(given[0].get("hour"), 5);
  assert.equal(given[1], 5);
});

test("listeners go by name, by function, by owner, or all together", () => {
  const owners = [{}, {}];
  const left = (off) => {
    const model = new Model({ hour: 4, minute: 35 });
    const told = [];
    const one = () => told.push("one");
    const two = () => told.push("two");
    model.on("change:hour", one, owners[0]);
    model.on("change:minute", one, owners[0]);
    model.on("change:hour", two, owners[1]);
    model.off(...off({ one, two }));
    model.set({ hour: 5, minute: 0 });
    return told;
  };
  assert.deepEqual(left(() => ["change:hour"]), ["one"]);
  assert.deepEqual(left(({ one }) => [null, one]), ["two"]);
  assert.deepEqual(left(({ one }) => ["change:minute", one]), ["one", "two"]);
  assert.deepEqual(left(() => [null, null, owners[1]]), ["one", "one"]);
  assert.deepEqual(left(() => []), []);
});

test("likeness tells apart what JSON tells apart", () => {
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

test("bytes stand where they stood", () => {
  const { sound } = traits(SAVED, "m3").list[0];
  assert.deepEqual([...new Uint8Array(sound.buffer)], [0, 255]);
});

test("a reference has one of two forms", () => {
  assert.equal(referred("anywidget:m2"), "m2");
  assert.equal(referred("IPY_MODEL_m2"), "m2");
  for (const wrong of ["m2", "anywidget:", "", null, undefined, 7, { id: "m2" }]) {
    assert.throws(() => referred(wrong), /is no reference to a widget/);
  }
});

/** A host with one kind of widget, and how often its code was loaded. */
function hosted(made, saved = SAVED) {
  const loads = [];
  const page = { head: { append() {} }, createElement: () => ({}) };
  const load = async (code) => {
    loads.push(code);
    return { default: made };
  };
  return { loads, ...openHost(saved, load, page) };
}

test("code is loaded once a kind, and each widget sets itself up once", async () => {
  const begun = [];
  const { show, loads } = hosted({
    initialize: ({ model }) => begun.push(model.get("loud")),
    render() {},
  });
  await show("m1", { el: {} });
  await show("m1", { el: {} });
  assert.deepEqual(loads, ["clock"]);
  assert.deepEqual(begun, [true, false, true]);
});

test("a view's listeners go with it, and only they", async () => {
  const told = [];
  const { show, model } = hosted({
    render({ model: own, el }) {
      own.on("change:loud", () => told.push(el.name));
      return () => told.push(`tidied ${el.name}`);
    },
  });
  const short = new AbortController();
  await show("m1", { el: { name: "short" }, signal: short.signal });
  await show("m1", { el: { name: "long" } });
  model("m1").set("loud", false);
  short.abort();
  model("m1").set("loud", true);
  assert.deepEqual(told, ["short", "long", "tidied short", "long"]);
});

test("a view whose time is over before it came is tidied at once", async () => {
  const told = [];
  const short = new AbortController();
  const { show } = hosted({
    async render() {
      short.abort();
      return () => told.push("tidied");
    },
  });
  await show("m1", { el: {}, signal: short.signal });
  assert.deepEqual(told, ["tidied"]);
});

test("a widget cannot take away the listeners of others", async () => {
  const told = [];
  const { show, model } = hosted({
    render({ model: own, el }) {
      own.off();
      own.off("change:loud");
      own.on("change:loud", () => told.push(el.name));
    },
  });
  await show("m1", { el: { name: "first" } });
  await show("m1", { el: { name: "second" } });
  model("m1").set("loud", false);
  assert.deepEqual(told, ["first", "second"]);
});

test("there is nobody to send to, and asking says so", async () => {
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

test("a widget that the page does not carry is named", async () => {
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

test("the widget manager of old finds a model too", async () => {
  let found;
  const { show } = hosted({
    async render({ model }) {
      found = (await model.widget_manager.get_model("m2")).get("loud");
    },
  });
  await show("m1", { el: {} });
  assert.equal(found, false);
});

test("a widget that never sets itself up is given up", async (context) => {
  context.mock.timers.enable({ apis: ["setTimeout"] });
  const { show } = hosted({ initialize: () => new Promise(() => {}), render() {} });
  const shown = assert.rejects(show("m1", { el: {} }), /Clock was not ready in time/);
  context.mock.timers.tick(10_000);
  await shown;
});

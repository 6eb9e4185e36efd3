// What a page for pupils stores, and the results file.
import assert from "node:assert/strict";
import test from "node:test";
import {
  answersOf, resultsFile, scoreInWords,
} from "../../manipulatives/outputs/page/pupils/results.js";
import {
  canStore, codeOf, openWork, workIn,
} from "../../manipulatives/outputs/page/pupils/storage.js";

function makeStore() {
  const items = {};
  Object.defineProperties(items, {
    getItem: { value: (name) => items[name] ?? null },
    setItem: { value: (name, text) => Object.assign(items, { [name]: text }) },
    removeItem: { value: (name) => Reflect.deleteProperty(items, name) },
  });
  return items;
}

test("a code is letters and digits, however it is typed", () => {
  assert.equal(codeOf(" k-7 "), "K7");
  assert.equal(codeOf("é4"), "É4");
  assert.equal(codeOf("a name and more"), "ANAMEAND");
  assert.equal(codeOf("/../"), "");
});

test("work is stored under lesson and code, and deleted for one pupil alone", () => {
  const store = makeStore();
  const work = { stage: 1, parts: { one: { saved: {}, results: [] } }, record: null };
  openWork(store, "Market 7", "A1").write(work);
  openWork(store, "Market 7", "").write(work);
  assert.deepEqual(openWork(store, "Market 7", "A1").read(), work);
  assert.equal(openWork(store, "Market 7", "A").read(), null);
  assert.equal(openWork(store, "Market 8", "A1").read(), null);
  openWork(store, "Market 7", "").forget();
  assert.deepEqual(openWork(store, "Market 7", "A1").read(), work);
  openWork(store, "Market 7", "A1").forget();
  assert.deepEqual(Object.keys(store), []);
});

test("stored work that cannot be read counts as none", () => {
  for (const data of [null, 7, {}, { stage: -1, parts: {} }, { stage: 0, parts: null }]) {
    assert.equal(workIn(data), null);
  }
  assert.deepEqual(
    workIn({ stage: 0, parts: { a: { results: "x" } } }), { stage: 0, parts: {}, record: null },
  );
  const old = { stage: 0, parts: { a: { kept: { at: 1 }, results: [] } } };
  assert.deepEqual(workIn(old).parts, { a: { saved: { at: 1 }, results: [] } }, "version 0.1.0");
});

test("a browser that stores nothing is detected by trying", () => {
  assert.equal(canStore(makeStore()), true);
  assert.equal(canStore(null), false);
  const refuse = () => {
    throw new Error("full");
  };
  assert.equal(canStore({ getItem: () => null, setItem: refuse }), false);
  assert.equal(canStore({ getItem: () => null, setItem() {} }), false);
});

test("a results file identifies the pupil by the code alone", () => {
  const lesson = { title: "Maandag: één!", seed: 7, date: "2026-11-25", tasks: [] };
  const source = { kit: "0.1.0", class: "owls", lesson: "0123456789abcdef" };
  const record = { id: "0f".repeat(16), revision: 3, text: "" };
  const { name, text } = resultsFile(source, record, { ...lesson, code: "K7" });
  assert.equal(name, "results-maandag-een-K7-2026-11-25.json");
  assert.deepEqual(JSON.parse(text), {
    format: "manipulatives results", version: 2, id: record.id, revision: 3, ...source, ...lesson,
    code: "K7",
  });
  const unnamed = resultsFile(source, record, { ...lesson, code: null });
  assert.equal(unnamed.name, "results-maandag-een-2026-11-25.json");
  assert.equal(JSON.parse(unnamed.text).code, null);
});

test("a round is scoreInWords up in words", () => {
  const results = [{ right: true, given: ["4"] }, { right: false, given: ["5", { total: 3 }] }];
  assert.equal(scoreInWords(results), "1 of 2 right");
  assert.equal(answersOf(results[1]), "5, made");
});

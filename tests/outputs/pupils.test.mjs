// What a page for pupils keeps, and what is handed in.
import assert from "node:assert/strict";
import test from "node:test";
import { answersOf, resultsFile, summed } from "../../manipulatives/outputs/page/pupils/results.js";
import { codeOf, keeps, openWork, workIn } from "../../manipulatives/outputs/page/pupils/store.js";

function storage() {
  const held = {};
  Object.defineProperties(held, {
    getItem: { value: (name) => held[name] ?? null },
    setItem: { value: (name, text) => Object.assign(held, { [name]: text }) },
    removeItem: { value: (name) => Reflect.deleteProperty(held, name) },
  });
  return held;
}

test("a code is letters and digits, however it is typed", () => {
  assert.equal(codeOf(" k-7 "), "K7");
  assert.equal(codeOf("é4"), "É4");
  assert.equal(codeOf("a name and more"), "ANAMEAND");
  assert.equal(codeOf("/../"), "");
});

test("work is kept under lesson and code, and forgotten for one pupil alone", () => {
  const shelf = storage();
  const work = { stage: 1, parts: { one: { kept: {}, results: [] } }, record: null };
  openWork(shelf, "Market 7", "A1").write(work);
  openWork(shelf, "Market 7", "").write(work);
  assert.deepEqual(openWork(shelf, "Market 7", "A1").read(), work);
  assert.equal(openWork(shelf, "Market 7", "A").read(), null);
  assert.equal(openWork(shelf, "Market 8", "A1").read(), null);
  openWork(shelf, "Market 7", "").forget();
  assert.deepEqual(openWork(shelf, "Market 7", "A1").read(), work);
  openWork(shelf, "Market 7", "A1").forget();
  assert.deepEqual(Object.keys(shelf), []);
});

test("work that cannot be used is none", () => {
  for (const kept of [null, 7, {}, { stage: -1, parts: {} }, { stage: 0, parts: null }]) {
    assert.equal(workIn(kept), null);
  }
  assert.deepEqual(
    workIn({ stage: 0, parts: { a: { results: "x" } } }), { stage: 0, parts: {}, record: null },
  );
});

test("a browser that keeps nothing is known by trying", () => {
  assert.equal(keeps(storage()), true);
  assert.equal(keeps(null), false);
  const refuse = () => {
    throw new Error("full");
  };
  assert.equal(keeps({ getItem: () => null, setItem: refuse }), false);
  assert.equal(keeps({ getItem: () => null, setItem() {} }), false);
});

test("a results file says whose work it is by the code alone", () => {
  const lesson = { title: "Maandag: één!", seed: 7, date: "2026-11-25", tasks: [] };
  const source = { kit: "0.1.0", class: "owls", lesson: "0123456789abcdef" };
  const record = { id: "0f".repeat(16), revision: 3, text: "" };
  const { name, text } = resultsFile(source, record, { ...lesson, code: "K7" });
  assert.equal(name, "results-maandag-een-K7-2026-11-25.json");
  assert.deepEqual(JSON.parse(text), {
    format: "manipulatives results", version: 2, id: record.id, revision: 3, ...source, ...lesson,
    code: "K7",
  });
  const nobody = resultsFile(source, record, { ...lesson, code: null });
  assert.equal(nobody.name, "results-maandag-een-2026-11-25.json");
  assert.equal(JSON.parse(nobody.text).code, null);
});

test("a round is summed up in words", () => {
  const results = [{ right: true, given: ["4"] }, { right: false, given: ["5", { total: 3 }] }];
  assert.equal(summed(results), "1 of 2 right");
  assert.equal(answersOf(results[1]), "5, made");
});

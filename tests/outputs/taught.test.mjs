// How long a lesson took, how its rounds went, and what the browser keeps of it.
import assert from "node:assert/strict";
import test from "node:test";
import { cameUpEmpty, noteStore } from "../../manipulatives/outputs/page/host/empty_store.js";
import {
  MARKS, marksOf, sessionContents, sessionFile, wordsOf,
} from "../../manipulatives/outputs/page/teacher/marks.js";
import { newRecord, recordOf, revised } from "../../manipulatives/outputs/page/shared/record.js";
import { lessonStorage } from "../../manipulatives/widgets/shared/state/storage.js";
import {
  inDigits, inMinutes, passed, spentOf, total, unspent,
} from "../../manipulatives/outputs/page/teacher/spent.js";

// A Wednesday at noon by the wall, wherever this runs.
const NOON = new Date(2026, 10, 25, 12).getTime();

test("time goes to the part that is shown", () => {
  let spent = passed(unspent(), "hours", NOON);
  spent = passed(spent, "hours", NOON + 1000);
  spent = passed(spent, "ferry", NOON + 3000);
  assert.deepEqual(spent.used, { hours: 1000, ferry: 2000 });
  assert.equal(total(spent), 3000);
  assert.equal(spent.day, "2026-11-25");
});

test("while the page is closed, asleep, or set back no time passes", () => {
  const spent = passed(unspent(), "hours", NOON);
  assert.equal(total(passed(spent, "hours", NOON + 60_000)), 60_000);
  assert.equal(total(passed(spent, "hours", NOON + 3_600_000)), 0);
  assert.equal(total(passed(spent, "hours", NOON - 5000)), 0);
  const kept = spentOf(JSON.parse(JSON.stringify(passed(spent, "hours", NOON + 5000))));
  assert.equal(total(passed(kept, "hours", NOON + 30_000)), 5000);
});

test("what was kept of the time and is none counts for nothing", () => {
  for (const broken of [null, 7, "x", {}, { day: "now", used: {} }, { day: "2026-11-25" }]) {
    assert.deepEqual(spentOf(broken), unspent());
  }
  const half = spentOf({ day: "2026-11-25", used: { a: 5, b: "x", c: -1, d: null }, at: 3 });
  assert.deepEqual(half, { day: "2026-11-25", used: { a: 5 }, at: null });
});

test("the time is told in whole minutes against the plan", () => {
  assert.equal(inMinutes(0, 900, false), "15 min");
  assert.equal(inMinutes(0, 900, true), "0 of 15 min");
  assert.equal(inMinutes(6.9 * 60_000, 900, true), "6 of 15 min");
  assert.equal(inMinutes(17 * 60_000, 900, true), "17 of 15 min");
  assert.equal(inMinutes(61_000, 20, true), "1 of 1 min");
  assert.equal(inMinutes(61_000, 0, true), "1 min");
  assert.equal(inMinutes(0, 0, false), "");
  assert.equal(inDigits(0), "0:00");
  assert.equal(inDigits(65_999), "1:05");
});

test("there are three marks, and nothing else is one", () => {
  assert.deepEqual(MARKS.map(([, words]) => words), ["Most had it", "About half", "Few"]);
  assert.deepEqual(marksOf({ a: "most", b: "all", c: 3, d: "few" }), { a: "most", d: "few" });
  assert.deepEqual(marksOf(null), {});
  assert.equal(wordsOf("half"), "About half");
  assert.equal(wordsOf(null), "");
});

const SOURCE = { kit: "0.1.0", class: null, lesson: "0123456789abcdef" };
const RECORD = { id: "0f".repeat(16), revision: 3, text: "" };

test("a record keeps its id, and has another revision only when something in it changed", () => {
  const first = revised(newRecord(), { tasks: 1 });
  assert.match(first.id, /^[0-9a-f]{32}$/);
  assert.equal(first.revision, 1);
  assert.deepEqual(revised(recordOf(JSON.parse(JSON.stringify(first))), { tasks: 1 }), first);
  const second = revised(first, { tasks: 2 });
  assert.deepEqual([second.id, second.revision], [first.id, 2]);
  assert.notEqual(newRecord().id, newRecord().id);
});

test("a saved record that cannot be used is replaced by a new one", () => {
  for (const wrong of [null, 7, {}, { ...RECORD, id: "x" }, { ...RECORD, revision: -1 }]) {
    assert.equal(recordOf(wrong).revision, 0);
  }
});

test("a session file says what was taught, in whole seconds, and names nobody", () => {
  const tasks = [{ prompt: "What time is it?", asked: { start: {}, goal: {}, answer: "4:30" } }];
  const first = { round: 1, title: "Half past", skill: "time.read_half", options: { snap: 5 },
    seed: 4351, planned: 120, mark: "half", tasks };
  const second = { round: 2, title: "Set the clock", skill: "time.set_hands", options: {},
    seed: 4353, planned: 180, mark: null, tasks: [] };
  const contents = sessionContents({
    title: "Market clock: Café & <b>", seed: 4350, date: "2026-11-25",
    rounds: [{ ...first, used: 75_499 }, { ...second, used: 0 }],
  });
  const { name, text } = sessionFile(SOURCE, RECORD, contents);
  assert.equal(name, "session-market-clock-cafe-b-2026-11-25.json");
  assert.deepEqual(JSON.parse(text), {
    format: "manipulatives session",
    version: 2,
    id: RECORD.id,
    revision: 3,
    ...SOURCE,
    title: "Market clock: Café & <b>",
    seed: 4350,
    date: "2026-11-25",
    rounds: [{ ...first, used: 75 }, { ...second, used: 0 }],
  });
  assert.ok(text.endsWith("}\n"));
});

test("a lesson that has not begun has no date, and any title makes a file's name", () => {
  const file = (title) => sessionFile(
    SOURCE, RECORD, sessionContents({ title, seed: 0, date: "", rounds: [] }),
  );
  assert.equal(JSON.parse(file("x").text).date, null);
  assert.equal(file("../../etc/passwd").name, "session-etc-passwd.json");
  assert.equal(file("").name, "session.json");
  assert.equal(file("Über \u4e2d\u6587").name, "session-uber-\u4e2d\u6587.json");
});

// A browser's store over a map.
function storeOver(held) {
  return new Proxy({
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, text) => held.set(key, text),
    removeItem: (key) => held.delete(key),
  }, {
    ownKeys: () => [...held.keys()],
    getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
  });
}

test("a lesson's memory is its own, and is forgotten with what its rounds keep", () => {
  const held = new Map();
  const storage = storeOver(held);
  const ferry = lessonStorage(storage, "ferry 7");
  const market = lessonStorage(storage, "market 7");
  ferry.write("stage", 2);
  market.write("stage", 3);
  held.set("ferry 7/a round", "{}");
  held.set("market 7/broken", "{");
  assert.equal(ferry.read("stage"), 2);
  assert.equal(market.read("stage"), 3);
  assert.equal(market.read("broken"), null);
  assert.equal(market.read("nothing"), null);
  ferry.forget();
  assert.deepEqual([...held.keys()], ["market 7/stage", "market 7/broken"]);
});

test("a store that comes up empty, and was not when the page was left, is not believed", () => {
  const held = new Map();
  const long = storeOver(held);
  const tab = storeOver(new Map());
  assert.equal(cameUpEmpty(long, tab), false, "a page that never was opened");
  noteStore(long, tab);
  assert.equal(cameUpEmpty(long, tab), false, "one that kept nothing");
  held.set("market 7/stage", "2");
  noteStore(long, tab);
  assert.equal(cameUpEmpty(long, tab), false, "one that has what it kept");
  const empty = storeOver(new Map());
  const often = [1, 2, 3, 4, 5].map(() => cameUpEmpty(empty, tab));
  assert.deepEqual(often, [true, true, true, false, false]);
  // It is believed in the end, and what it keeps from then on counts.
  noteStore(empty, tab);
  assert.equal(cameUpEmpty(empty, tab), false);
});

test("where keeping is refused nothing is kept and nothing breaks", () => {
  const refuse = () => {
    throw new Error("refused");
  };
  for (const storage of [null, { getItem: refuse, setItem: refuse }]) {
    const memory = lessonStorage(storage, "ferry 7");
    memory.write("stage", 2);
    memory.forget();
    assert.equal(memory.read("stage"), null);
    noteStore(storage, storage);
    assert.equal(cameUpEmpty(storage, storage), false);
  }
});

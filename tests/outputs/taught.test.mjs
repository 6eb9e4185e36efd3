// How long a lesson took, how its rounds went, and what the browser stores of it.
import assert from "node:assert/strict";
import test from "node:test";
import { whenCommitted } from "../../manipulatives/outputs/page/host/committed.js";
import {
  MARKS, marksOf, sessionContents, sessionFile, wordsOf,
} from "../../manipulatives/outputs/page/teacher/marks.js";
import { newRecord, recordOf, revised } from "../../manipulatives/outputs/page/shared/record.js";
import { lessonStorage } from "../../manipulatives/widgets/shared/state/storage.js";
import {
  inDigits, inMinutes, withTime, timeUsedOf, total, noTimeUsed,
} from "../../manipulatives/outputs/page/teacher/time_used.js";

// A Wednesday at noon, in the local time zone.
const NOON = new Date(2026, 10, 25, 12).getTime();

test("time goes to the part that is shown", () => {
  let time = withTime(noTimeUsed(), "hours", NOON);
  time = withTime(time, "hours", NOON + 1000);
  time = withTime(time, "ferry", NOON + 3000);
  assert.deepEqual(time.used, { hours: 1000, ferry: 2000 });
  assert.equal(total(time), 3000);
  assert.equal(time.day, "2026-11-25");
});

test("no time counts while the page is closed or asleep, or when the clock is set back", () => {
  const time = withTime(noTimeUsed(), "hours", NOON);
  assert.equal(total(withTime(time, "hours", NOON + 60_000)), 60_000);
  assert.equal(total(withTime(time, "hours", NOON + 3_600_000)), 0);
  assert.equal(total(withTime(time, "hours", NOON - 5000)), 0);
  const saved = timeUsedOf(JSON.parse(JSON.stringify(withTime(time, "hours", NOON + 5000))));
  assert.equal(total(withTime(saved, "hours", NOON + 30_000)), 5000);
});

test("stored times that are not valid count as none", () => {
  for (const broken of [null, 7, "x", {}, { day: "now", used: {} }, { day: "2026-11-25" }]) {
    assert.deepEqual(timeUsedOf(broken), noTimeUsed());
  }
  const half = timeUsedOf({ day: "2026-11-25", used: { a: 5, b: "x", c: -1, d: null }, at: 3 });
  assert.deepEqual(half, { day: "2026-11-25", used: { a: 5 }, at: null });
});

test("the time is written in whole minutes beside the plan", () => {
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

test("there are three marks, and other values are dropped", () => {
  assert.deepEqual(MARKS.map(([, words]) => words), ["Most had it", "About half", "Few"]);
  assert.deepEqual(marksOf({ a: "most", b: "all", c: 3, d: "few" }), { a: "most", d: "few" });
  assert.deepEqual(marksOf(null), {});
  assert.equal(wordsOf("half"), "About half");
  assert.equal(wordsOf(null), "");
});

const SOURCE = { kit: "0.1.0", class: null, lesson: "0123456789abcdef" };
const RECORD = { id: "0f".repeat(16), revision: 3, text: "" };

test("the id of a record stays, and its revision changes only with its contents", () => {
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

test("a session file says what was taught, in whole seconds, and names no child", () => {
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
function storeOver(items) {
  return new Proxy({
    getItem: (key) => items.get(key) ?? null,
    setItem: (key, text) => items.set(key, text),
    removeItem: (key) => items.delete(key),
  }, {
    ownKeys: () => [...items.keys()],
    getOwnPropertyDescriptor: () => ({ enumerable: true, configurable: true }),
  });
}

test("the storage of a lesson is separate, and is deleted with that of its rounds", () => {
  const items = new Map();
  const storage = storeOver(items);
  const ferry = lessonStorage(storage, "ferry 7");
  const market = lessonStorage(storage, "market 7");
  ferry.write("stage", 2);
  market.write("stage", 3);
  items.set("ferry 7/a round", "{}");
  items.set("market 7/broken", "{");
  assert.equal(ferry.read("stage"), 2);
  assert.equal(market.read("stage"), 3);
  assert.equal(market.read("broken"), null);
  assert.equal(market.read("nothing"), null);
  ferry.forget();
  assert.deepEqual([...items.keys()], ["market 7/stage", "market 7/broken"]);
});

// A browser whose permission query is this function.
const browserThat = (query) => ({ permissions: { query } });

test("a page waits until the browser has answered once", async () => {
  let answer;
  let went = false;
  const waiting = whenCommitted(browserThat(() => new Promise((resolve) => {
    answer = resolve;
  }))).then(() => {
    went = true;
  });
  await new Promise(setImmediate);
  assert.equal(went, false);
  answer({ state: "prompt" });
  await waiting;
});

test("a page never waits longer than a second, and not where no query is possible", async (t) => {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  await whenCommitted({});
  await whenCommitted(browserThat(() => Promise.reject(new TypeError("not known"))));
  await whenCommitted(browserThat(() => {
    throw new TypeError("not known");
  }));
  const waiting = whenCommitted(browserThat(() => new Promise(() => {})));
  t.mock.timers.tick(1000);
  await waiting;
});

test("where the browser refuses storage nothing is stored and nothing throws", () => {
  const refuse = () => {
    throw new Error("refused");
  };
  for (const storage of [null, { getItem: refuse, setItem: refuse }]) {
    const lesson = lessonStorage(storage, "ferry 7");
    lesson.write("stage", 2);
    lesson.forget();
    assert.equal(lesson.read("stage"), null);
  }
});

import assert from "node:assert/strict";
import { test } from "node:test";
import { QUESTION_DELAY_MS, judged, watchKernel } from "../../manipulatives/serve/board/watch.js";

/** Watches with answers given beforehand, and tells what was told; then the watch is ended. */
async function told(t, answers) {
  t.mock.timers.enable({ apis: ["setTimeout"] });
  const controller = new AbortController();
  const heard = [];
  let asked = 0;
  const ask = async () => {
    asked += 1;
    if (asked >= answers.length) {
      controller.abort();
    }
    return answers[asked - 1];
  };
  const watch = watchKernel(ask, (state) => heard.push(state), controller.signal);
  for (let turn = 0; turn < answers.length + 1; turn += 1) {
    // Lets the answer come in before the clock goes on.
    await new Promise((done) => {
      setImmediate(done);
    });
    t.mock.timers.tick(QUESTION_DELAY_MS);
  }
  await watch;
  return { heard, asked };
}

test("a kernel that lives is not spoken of", async (t) => {
  assert.deepEqual(await told(t, [true, true, true]), { heard: [], asked: 3 });
});

test("an ended kernel is reported once, and not polled again", async (t) => {
  assert.deepEqual(await told(t, [true, false, true, true]), { heard: ["ended"], asked: 2 });
});

test("a missing server is reported at once and may come back", async (t) => {
  const { heard } = await told(t, [true, "refused", "refused", true, false]);
  assert.deepEqual(heard, ["silent", "alive", "ended"]);
});

test("one answer that comes late says nothing, two in a row do", async (t) => {
  assert.deepEqual((await told(t, ["late", true, "late", true])).heard, []);
  assert.deepEqual(judged("late", 1), null);
  assert.deepEqual(judged("late", 2), "silent");
});

test("two late answers in a row are reported", async (t) => {
  assert.deepEqual((await told(t, ["late", "late", true])).heard, ["silent", "alive"]);
});

test("a kernel is asked about often enough to be missed within three seconds", () => {
  assert.ok(QUESTION_DELAY_MS <= 1000);
});

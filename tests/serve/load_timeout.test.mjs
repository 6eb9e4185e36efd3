// How long anywidget waits for the widgets of a board.
import assert from "node:assert/strict";
import test from "node:test";
import {
  LOAD_TIMEOUT_MS, extendLoadTimeout,
} from "../../manipulatives/serve/board/load_timeout.js";

// The browser's AbortSignal, as far as it is asked for a timeout.
function signals() {
  const asked = [];
  return { asked, timeout: (milliseconds) => asked.push(milliseconds) };
}

test("only the two seconds of anywidget are made longer, and only until that is undone", () => {
  const browser = signals();
  const { timeout } = browser;
  const restore = extendLoadTimeout(browser);
  for (const milliseconds of [2000, 1500, 3000]) {
    browser.timeout(milliseconds);
  }
  assert.deepEqual(browser.asked, [LOAD_TIMEOUT_MS, 1500, 3000]);
  restore();
  assert.equal(browser.timeout, timeout);
});

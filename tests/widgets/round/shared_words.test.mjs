import assert from "node:assert/strict";
import { test } from "node:test";

import { sharedWords } from "../../../manipulatives/widgets/round/board/state/shared_words.js";

test("what all questions say is shown once, and each keeps its own", () => {
  assert.deepEqual(sharedWords(["Write 97 in expanded form.", "Write 308 in expanded form."]), {
    common: "Write \u2026 in expanded form.", own: ["97", "308"],
  });
  assert.deepEqual(sharedWords(["Which number is 20 + 9?", "Which number is 300 + 2?"]), {
    common: "Which number is \u2026?", own: ["20 + 9", "300 + 2"],
  });
});

test("words of the numbers themselves are nobody's but theirs", () => {
  const prompts = ["Write in digits: one hundred five.", "Write in digits: one hundred six."];
  assert.deepEqual(sharedWords(prompts), {
    common: "Write in digits:", own: ["one hundred five", "one hundred six"],
  });
});

test("sums share nothing, even where numbers are alike", () => {
  for (const prompts of [["3 + 4", "3 + 5"], ["? + 7 = 10", "? + 4 = 10"], ["Write 97."]]) {
    assert.deepEqual(sharedWords(prompts), { common: "", own: prompts });
  }
});

test("each question keeps a word of its own", () => {
  const shared = { common: "Read \u2026", own: ["it", "it"] };
  assert.deepEqual(sharedWords(["Read it", "Read it"]), shared);
});

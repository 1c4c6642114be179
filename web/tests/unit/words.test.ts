import assert from "node:assert/strict";
import { test } from "node:test";
import { words } from "../../src/words";

function texts(of: unknown): string[] {
  if (typeof of === "string") return [of];
  if (typeof of === "function") return [String((of as (...given: unknown[]) => unknown)(2, 3))];
  if (of && typeof of === "object") return Object.values(of).flatMap(texts);
  return [];
}

// Own rule, from docs/safety.md 5: these words occur in no text.
test("no text of the page calms or judges", () => {
  for (const text of texts(words)) {
    assert.doesNotMatch(text, /\bno lows\b|\bsafe\b|\bfine\b|\bcured\b|\bscore\b|\bstreak\b/i);
  }
});

test("every live view can say that it is no alarm", () => {
  assert.equal(words.notAnAlarm, "Not an alarm. Don't rely on this page to be woken or warned.");
});

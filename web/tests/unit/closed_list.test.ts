import assert from "node:assert/strict";
import { test } from "node:test";
import { reasonsOf } from "../../src/closed_list";

test("a gate that closes several changes is told once, with all it closes", () => {
  const gate = { sentence: "The eyes.", opens: "Ask first.", letter: false };
  const other = { sentence: "A beta-blocker.", opens: "A letter.", letter: true };
  const told = reasonsOf([
    { code: "a", words: "eat less", gates: [gate] },
    { code: "b", words: "walk", gates: [other, gate] },
  ]);
  assert.deepEqual(
    told.map(({ sentence, closes }) => [sentence, closes.map(({ code }) => code)]),
    [
      ["The eyes.", ["a", "b"]],
      ["A beta-blocker.", ["b"]],
    ],
  );
});

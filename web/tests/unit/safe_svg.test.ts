import assert from "node:assert/strict";
import { test } from "node:test";
import { mayHave, mayStand } from "../../src/safe_svg";

test("what a drawing needs may stand, what could act may not", () => {
  for (const name of ["svg", "polyline", "pattern", "text", "desc"]) assert.ok(mayStand(name), name);
  for (const name of ["script", "style", "foreignObject", "image", "use", "a", "animate", "set"]) {
    assert.ok(!mayStand(name), name);
  }
});

test("no attribute may act, style, or point out of the figure", () => {
  assert.ok(mayHave("fill", "url(#tw-fill-3)"));
  assert.ok(mayHave("points", "1,2 3,4"));
  for (const [name, value] of [
    ["onload", "x()"],
    ["style", "color:red"],
    ["href", "#a"],
    ["xlink:href", "#a"],
    ["fill", "url(https://example.org/a#b)"],
    ["fill", "URL(//example.org#b)"],
    ["fill", "url(#a) url(data:x)"],
  ] as const) {
    assert.ok(!mayHave(name, value), `${name}=${value}`);
  }
});

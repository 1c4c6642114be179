import assert from "node:assert/strict";
import { test } from "node:test";
import { moved, scaled, share, within } from "../../src/stretch";
import { afterKey } from "../../src/trace_sheet";

const day = { from: 1000, to: 1000 + 86400 };

test("a stretch never leaves the whole, nor gets closer than a quarter of an hour", () => {
  assert.deepEqual(within({ from: 0, to: 3600 }, day), { from: 1000, to: 4600 });
  assert.deepEqual(within({ from: 90000, to: 97200 }, day), { from: 80200, to: 87400 });
  assert.deepEqual(within({ from: 2000, to: 2001 }, day), { from: 2000, to: 2900 });
  assert.deepEqual(within({ from: -5, to: 1e9 }, day), day);
});

test("closer and wider keep the middle; moving keeps the length", () => {
  const half = scaled(day, 0.5, day);
  assert.deepEqual(half, { from: 1000 + 21600, to: 1000 + 64800 });
  assert.deepEqual(scaled(half, 2, day), day);
  assert.deepEqual(moved(half, 0.25, day), { from: half.from + 10800, to: half.to + 10800 });
  assert.deepEqual(moved(day, -1, day), day);
  assert.equal(share(1000 + 43200, day), 0.5);
});

test("keys move and look closer, other keys do nothing", () => {
  assert.deepEqual(afterKey("+", day, day), scaled(day, 0.5, day));
  assert.deepEqual(afterKey("0", scaled(day, 0.5, day), day), day);
  assert.equal(afterKey("x", day, day), null);
});

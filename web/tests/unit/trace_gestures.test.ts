import assert from "node:assert/strict";
import { test } from "node:test";
import { instantAt, share } from "../../src/stretch";
import { afterFingers, afterWheel, dragMarks } from "../../src/trace_gestures";

const whole = { from: 0, to: 14 * 86_400 };
const day = { from: 5 * 86_400, to: 6 * 86_400 };
const turn = { deltaX: 0, deltaY: 0, ctrlKey: false, metaKey: false, shiftKey: false };
const near = (one: number | undefined, other: number) => assert.ok(Math.abs((one ?? NaN) - other) < 1e-3, `${one} is not ${other}`);

test("the wheel with Ctrl comes closer about the instant under the pointer, and goes wider by the same", () => {
  for (const at of [0.1, 0.5, 0.9]) {
    const closer = afterWheel({ ...turn, ctrlKey: true, deltaY: -100 }, at, 1000, day, whole);
    assert.ok(closer && closer.to - closer.from < day.to - day.from);
    near(instantAt(at, closer), instantAt(at, day));
    const back = afterWheel({ ...turn, ctrlKey: true, deltaY: 100 }, at, 1000, closer, whole);
    near(back?.from, day.from);
    near(back?.to, day.to);
  }
  assert.deepEqual(afterWheel({ ...turn, ctrlKey: true, deltaY: 5000 }, 0.3, 1000, day, whole), whole);
});

test("a plain wheel stays the page's; a sideways one moves until there is nothing more to move to", () => {
  assert.equal(afterWheel({ ...turn, deltaY: 100 }, 0.5, 1000, day, whole), null);
  assert.equal(afterWheel({ ...turn, deltaX: 20, deltaY: 100 }, 0.5, 1000, day, whole), null);
  const later = { from: day.from + 8640, to: day.to + 8640 };
  assert.deepEqual(afterWheel({ ...turn, deltaX: 100 }, 0.5, 1000, day, whole), later);
  assert.deepEqual(afterWheel({ ...turn, shiftKey: true, deltaY: 100 }, 0.5, 1000, day, whole), later);
  assert.equal(afterWheel({ ...turn, deltaX: 100 }, 0.5, 1000, { from: 13 * 86_400, to: 14 * 86_400 }, whole), null);
});

test("each of two fingers keeps the instant it was put on; one moves the trace", () => {
  const held = [0.3, 0.6].map((at) => ({ instant: instantAt(at, day), at }));
  const [one, other] = held;
  assert.ok(one && other);
  one.at = 0.2;
  other.at = 0.8;
  const closer = afterFingers(held, day, whole);
  near(share(one.instant, closer), 0.2);
  near(share(other.instant, closer), 0.8);
  assert.deepEqual(afterFingers([{ instant: instantAt(0.5, day), at: 0.25 }], day, whole), { from: day.from + 21_600, to: day.to + 21_600 });
  // Fingers that cross, or stand on one another, tell nothing.
  one.at = 0.81;
  assert.equal(afterFingers(held, day, whole), day);
  assert.equal(afterFingers([], day, whole), day);
});

test("a drag marks a stretch where nothing can be moved to, or with Shift", () => {
  assert.equal(dragMarks({ shiftKey: false }, whole, whole), true);
  assert.equal(dragMarks({ shiftKey: false }, day, whole), false);
  assert.equal(dragMarks({ shiftKey: true }, day, whole), true);
});

import assert from "node:assert/strict";
import { test } from "node:test";
import { type Box, boxesOf } from "../../src/line_boxes";

/** The same numbers at each run. */
function draws(seed: number) {
  let state = seed;
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 2 ** 32;
    return state / 2 ** 32;
  };
}

const within = ([left, top, width, height]: Box, x: number, y: number) =>
  left <= x && x <= left + width && top <= y && y <= top + height;

// docs/safety.md 2: what is very low leads. A screen that is too narrow for each reading may not hide it.
test("every reading is painted, so none that is low is lost, whatever the readings and the width", () => {
  for (let seed = 1; seed <= 40; ++seed) {
    const draw = draws(seed);
    const count = 2000 + Math.floor(draw() * 19_000);
    const width = 50 + Math.floor(draw() * 1500);
    const at = Array.from({ length: count }, (_, index) => 60 * index + Math.floor(20 * draw()));
    const values = at.map(() => {
      const kind = draw();
      if (kind < 0.02) return kind < 0.01 ? null : undefined;
      return kind < 0.03 ? 40 + Math.floor(14 * draw()) : 70 + Math.floor(150 * draw());
    });
    const xOf = (instant: number) => (instant / (60 * count)) * width;
    const yOf = (value: number) => 300 - value;
    const boxes = boxesOf(at, values, [0, count - 1], { begin: 0, secondsPerColumn: (60 * count) / width, yOf }, 2);
    assert.ok(boxes.length <= 3 * (width + 1) + values.filter((value) => value === null).length);
    const byColumn = new Map<number, Box[]>();
    for (const box of boxes) {
      for (let x = Math.floor(box[0]); x <= box[0] + box[2]; ++x) byColumn.set(x, [...(byColumn.get(x) ?? []), box]);
    }
    at.forEach((instant, index) => {
      const value = values[index];
      if (value == null) return;
      const x = Math.round(xOf(instant));
      assert.ok(
        byColumn.get(x)?.some((box) => within(box, x, yOf(value))),
        `seed ${seed}: ${value} at column ${x} of ${width} is not painted`,
      );
    });
  }
});

test("the line hangs together from column to column, and a gap stays a gap", () => {
  const yOf = (value: number) => 100 - value;
  const lineOf = (values: (number | null | undefined)[], at = values.map((_, index) => index)) =>
    boxesOf(at, values, [0, values.length - 1], { begin: 0.5, secondsPerColumn: 2, yOf }, 2);
  // Up from 12 to 90 between two columns: the second reaches back to where the first left off.
  assert.deepEqual(lineOf([10, 12, 90, 88]), [[-1, 87, 2, 4], [0, 9, 2, 80]]);
  // Another line's instants don't part it, a null does.
  assert.deepEqual(lineOf([10, undefined, 10, 10]), [[-1, 89, 2, 2], [0, 89, 2, 2]]);
  assert.deepEqual(lineOf([10, null, 90, 90]), [[-1, 89, 2, 2], [0, 9, 2, 2]]);
  // Columns without a reading between two of them are bridged.
  assert.deepEqual(lineOf([10, 10], [0.5, 10.5]), [[-1, 89, 2, 2], [-1, 89, 5, 2], [4, 89, 2, 2]]);
});

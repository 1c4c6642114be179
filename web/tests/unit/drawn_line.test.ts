// No low may be lost where several readings share a column of the screen: the line is thinned by the drawing library.
import assert from "node:assert/strict";
import { test } from "node:test";
import uPlot from "uplot";

/** Points of the line as they reach the canvas. */
class Recorded {
  readonly points: [number, number][] = [];
  moveTo(x: number, y: number) {
    this.points.push([x, y]);
  }
  lineTo(x: number, y: number) {
    this.points.push([x, y]);
  }
  rect() {}
}
Object.assign(globalThis, { Path2D: Recorded });

const top = 300;

/** What the library draws of readings in columns, 0 to 300 standing for themselves upside down. */
function lineOf(at: number[], values: (number | null)[], width: number): [number, number][] {
  const from = at[0] ?? 0;
  const to = at[at.length - 1] ?? 1;
  const scale = (ori: number, min: number, max: number, dir: number) => ({ key: ori === 0 ? "x" : "y", ori, min, max, dir });
  const xScale = scale(0, from, to, 1);
  const self = {
    mode: 1,
    series: [{ scale: "x" }, { pxAlign: 1, pxRound: Math.round, scale: "y", gaps: (_u: unknown, _s: number, _a: number, _b: number, gaps: unknown) => gaps }],
    _data: [at, values],
    scales: { x: xScale, y: scale(1, 0, top, 1) },
    bbox: { left: 0, top: 0, width, height: top },
    bands: [],
    posToVal: (position: number) => from + (position / width) * (to - from),
    valToPosH: (value: number, _scale: unknown, size: number, offset: number) => offset + ((value - from) / (to - from)) * size,
    valToPosV: (value: number, _scale: unknown, size: number, offset: number) => offset + (1 - value / top) * size,
  };
  const linear = uPlot.paths.linear?.({});
  const made = linear?.(self as unknown as uPlot, 1, 0, at.length - 1);
  return (made?.stroke as unknown as Recorded).points;
}

/** The same numbers at each run. */
function draws(seed: number) {
  let state = seed;
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 2 ** 32;
    return state / 2 ** 32;
  };
}

// The library parts columns at whole pixels and rounds to the nearest: a reading may stand a column further left.
test("the lowest and the highest of each column of the screen are drawn, whatever the readings", () => {
  for (let seed = 1; seed <= 60; ++seed) {
    const draw = draws(seed);
    const count = 4000 + Math.floor(draw() * 17_000);
    const width = 200 + Math.floor(draw() * 800);
    const at = Array.from({ length: count }, (_, index) => 60 * index);
    const values = at.map(() => {
      const kind = draw();
      return kind < 0.01 ? null : kind < 0.02 ? 40 + Math.floor(14 * draw()) : 70 + Math.floor(150 * draw());
    });
    const drawn = lineOf(at, values, width);
    const lowest = new Map<number, number>();
    const highest = new Map<number, number>();
    for (const [x, y] of drawn) {
      lowest.set(x, Math.max(lowest.get(x) ?? -1, y));
      highest.set(x, Math.min(highest.get(x) ?? 1e9, y));
    }
    at.forEach((instant, index) => {
      const value = values[index];
      if (value == null) return;
      const x = Math.round((instant / (at[count - 1] ?? 1)) * width);
      const y = Math.round((1 - value / top) * top);
      const low = Math.max(lowest.get(x) ?? -1, lowest.get(x - 1) ?? -1);
      const high = Math.min(highest.get(x) ?? 1e9, highest.get(x - 1) ?? 1e9);
      assert.ok(low >= y && high <= y, `seed ${seed}: ${value} at column ${x} of ${width} is not drawn`);
    });
  }
});

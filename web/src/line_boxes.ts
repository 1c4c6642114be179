import uPlot from "uplot";

/** Left, top, width and height in the canvas's own pixels. */
export type Box = [number, number, number, number];

/**
 * A line with more readings than the canvas has columns, as one upright box for each column: from its highest reading to
 * its lowest, and to where the column before left off. No reading is passed over, so no low is. Nulls part the line,
 * undefined (another wear's instants) doesn't. `from` and `to` are the first and last index.
 */
export function boxesOf(
  at: ArrayLike<number>,
  values: ArrayLike<number | null | undefined>,
  [from, to]: [number, number],
  xOf: (at: number) => number,
  yOf: (value: number) => number,
  thick: number,
): Box[] {
  const boxes: Box[] = [];
  let column = NaN;
  let top = 0;
  let bottom = 0;
  let last = 0;
  const close = () => {
    if (!Number.isNaN(column)) boxes.push([column - thick / 2, top - thick / 2, thick, bottom - top + thick]);
    column = NaN;
  };
  for (let index = from; index <= to; ++index) {
    const value = values[index];
    if (value === null) close();
    if (value == null) continue;
    const x = Math.round(xOf(at[index] ?? 0));
    const y = yOf(value);
    if (x === column) {
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    } else {
      const before = column;
      close();
      const joined = !Number.isNaN(before);
      if (joined && x > before + 1) boxes.push([before, last - thick / 2, x - before, thick]);
      top = joined ? Math.min(y, last) : y;
      bottom = joined ? Math.max(y, last) : y;
      column = x;
    }
    last = y;
  }
  close();
  return boxes;
}

/** uPlot's way of drawing a wear: boxes where readings are closer than columns, a line through each where they aren't. */
export function wearPaths(thick: number): uPlot.Series.PathBuilder {
  const line = uPlot.paths.linear?.({});
  return (plot, which, from, to) => {
    if (!line || to - from < plot.bbox.width) return line?.(plot, which, from, to) ?? null;
    // What a stroke of so many corners takes is many times what boxes take.
    const fill = new Path2D();
    const { left, width, top, height } = plot.bbox;
    const { min: begin = 0, max: end = 1 } = plot.scales["x"] ?? {};
    const { min: low = 0, max: high = 1 } = plot.scales["y"] ?? {};
    const xOf = (at: number) => left + ((at - (begin ?? 0)) / ((end ?? 1) - (begin ?? 0))) * width;
    const yOf = (value: number) => top + (1 - (value - (low ?? 0)) / ((high ?? 1) - (low ?? 0))) * height;
    for (const box of boxesOf(plot.data[0], plot.data[which] ?? [], [from, to], xOf, yOf, thick * devicePixelRatio)) fill.rect(...box);
    return { fill, stroke: null, _fill: (plot.series[which] as { _stroke?: string })._stroke ?? "" };
  };
}

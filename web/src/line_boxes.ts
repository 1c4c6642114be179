import uPlot from "uplot";

/** Left, top, width and height in the canvas's own pixels. */
export type Box = [number, number, number, number];

/** Where instants and values stand on the canvas. */
export interface CanvasScale {
  /** The instant in the middle of column 0. */
  begin: number;
  secondsPerColumn: number;
  yOf: (value: number) => number;
}

/**
 * A line with more readings than the canvas has columns, as one upright box for each column: from its highest reading to
 * its lowest, and to where the column before left off. No reading is passed over, so no low is. Nulls part the line,
 * undefined (another line's instants) doesn't. `from` and `to` are the first and last index.
 */
export function boxesOf(
  at: ArrayLike<number>,
  values: ArrayLike<number | null | undefined>,
  [from, to]: [number, number],
  { begin, secondsPerColumn, yOf }: CanvasScale,
  thick: number,
): Box[] {
  const boxes: Box[] = [];
  const box = (x: number, width: number, low: number, high: number) => {
    const top = yOf(high);
    boxes.push([x - thick / 2, top - thick / 2, width, yOf(low) - top + thick]);
  };
  // While no column is open, `ends` is before all instants.
  let column = 0;
  let ends = -Infinity;
  let low = 0;
  let high = 0;
  let last = 0;
  for (let index = from; index <= to; ++index) {
    const value = values[index];
    if (value == null) {
      if (value === null && ends > -Infinity) {
        box(column, thick, low, high);
        ends = -Infinity;
      }
      continue;
    }
    const instant = at[index] ?? 0;
    if (instant < ends) {
      if (value < low) low = value;
      else if (value > high) high = value;
    } else {
      const next = Math.round((instant - begin) / secondsPerColumn);
      const joined = ends > -Infinity;
      if (joined) {
        box(column, thick, low, high);
        if (next > column + 1) box(column, next - column, last, last);
      }
      low = joined && last < value ? last : value;
      high = joined && last > value ? last : value;
      column = next;
      ends = begin + (next + 0.5) * secondsPerColumn;
    }
    last = value;
  }
  if (ends > -Infinity) box(column, thick, low, high);
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
    const x = plot.scales["x"];
    const y = plot.scales["y"];
    const [begin, end, low, high] = [x?.min ?? 0, x?.max ?? 1, y?.min ?? 0, y?.max ?? 1];
    const secondsPerColumn = (end - begin) / width;
    const scale = {
      begin: begin - left * secondsPerColumn,
      secondsPerColumn,
      yOf: (value: number) => top + (1 - (value - low) / (high - low)) * height,
    };
    for (const box of boxesOf(plot.data[0], plot.data[which] ?? [], [from, to], scale, thick * devicePixelRatio)) fill.rect(...box);
    return { fill, stroke: null, _fill: (plot.series[which] as { _stroke?: string })._stroke ?? "" };
  };
}

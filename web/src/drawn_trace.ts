import type { Signal } from "@preact/signals";
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { BandGround } from "./band_paint";
import { wearPaths } from "./line_boxes";
import { paintBorders, paintPricks } from "./mark_paint";
import { onceAFrame } from "./once_a_frame";
import { PlotInks } from "./plot_inks";
import { same, type Stretch, within } from "./stretch";
import { civilTime, legible, ticksOf } from "./tick_choice";
import { dragMarks, listenToGestures } from "./trace_gestures";
import { columnsOf, linesOf, type ReadTrace, rowAt } from "./trace_rows";

const leftRoom = 64;
const rightRoom = 30;
const height = 300;

/** Room above and below what is drawn; at least from the lowest to the highest edge. */
function levels(trace: ReadTrace): [number, number] {
  let low = trace.band_edges[0] ?? 0;
  let high = trace.band_edges[trace.band_edges.length - 1] ?? 1;
  const take = (values: (number | null)[]) => {
    for (const value of values) {
      if (value === null) continue;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  };
  for (const wear of trace.wears) take(wear.value);
  take(trace.finger_pricks.map(({ value }) => value));
  const room = (high - low) * 0.06;
  return [low - room, high + room];
}

/** What of a trace stands on the canvas. */
function drawnOf(trace: ReadTrace, inks: PlotInks) {
  return {
    trace,
    columns: columnsOf(linesOf(trace)),
    ticks: ticksOf(trace),
    levels: levels(trace),
    ground: new BandGround(trace.band_edges, trace.bands, inks.of),
  };
}

export interface DrawnTrace {
  /** Another reading of the same stretch with as many lines; fingers that hold the trace go on holding it. */
  show: (trace: ReadTrace) => void;
  end: () => void;
}

/** Draws a trace into an element and lets it be dragged and looked at closer. `tell`: what stands under the pointer, '' for nothing. */
export function drawTrace(
  element: HTMLElement,
  first: ReadTrace,
  shown: Signal<Stretch>,
  whole: Stretch,
  tell: (under: string) => void,
): DrawnTrace {
  const inks = new PlotInks();
  let now = drawnOf(first, inks);
  const tickList = (self: uPlot) => legible(now.ticks, shown.peek(), self.width - leftRoom - rightRoom);
  const text = () => inks.of("--text");
  const font = "12px Inter, 'Noto Sans', sans-serif";
  const options: uPlot.Options = {
    width: element.clientWidth,
    height,
    padding: [8, rightRoom, 0, 0],
    legend: { show: false },
    cursor: {
      drag: { x: true, y: false, setScale: false },
      y: false,
      bind: {
        mousedown: (_self, _target, mark) => (event) => {
          if (dragMarks(event, shown.peek(), whole)) mark(event);
          return null;
        },
        dblclick: () => null,
      },
    },
    scales: {
      x: { time: false, range: () => [shown.peek().from, shown.peek().to] },
      y: { range: () => now.levels },
    },
    axes: [
      {
        splits: (self) => tickList(self).map((tick) => tick.at),
        values: (self) => tickList(self).map((tick) => tick.label),
        stroke: text,
        font,
        grid: { show: false },
        ticks: { stroke: text, width: 1, size: 4 },
      },
      {
        size: leftRoom,
        splits: () => now.trace.band_edges,
        values: () => now.trace.edge_words,
        stroke: text,
        font,
        grid: { stroke: () => inks.of("--line"), width: 1, dash: [4, 3] },
        ticks: { show: false },
      },
    ],
    series: [
      {},
      ...now.columns.slice(1).map((_line, which) => ({
        stroke: text,
        width: 2,
        // A sensor worn beside another one is told from it by dashes, or a thinner line where there is no room for them.
        paths: wearPaths(which > 0 ? 1 : 2),
        ...(which > 0 ? { dash: [6, 3] } : {}),
        points: { size: 5 },
      })),
    ],
    hooks: {
      drawClear: [(self) => now.ground.lay(self)],
      draw: [(self) => paintBorders(self, now.trace, shown.peek(), inks.of), (self) => paintPricks(self, now.trace, shown.peek(), inks.of)],
      setSelect: [
        (self) => {
          if (self.select.width < 4) return;
          const from = self.posToVal(self.select.left, "x");
          const to = self.posToVal(self.select.left + self.select.width, "x");
          self.setSelect({ left: 0, width: 0, top: 0, height: 0 }, false);
          shown.value = within({ from, to }, whole);
        },
      ],
      setCursor: [
        (self) => {
          const { trace, columns } = now;
          const at = self.cursor.idx == null ? undefined : columns[0][self.cursor.idx];
          const row = at === undefined ? undefined : rowAt(trace, at);
          const told = row?.told.filter((words) => words !== "") ?? [];
          tell(row && told.length > 0 ? `${row.label || civilTime(trace, row.at)}: ${told.join(", ")}` : "");
        },
      ],
    },
  };
  const drawn = new uPlot(options, now.columns as uPlot.AlignedData, element);
  const redraw = onceAFrame(() => {
    const { from, to } = shown.peek();
    if (drawn.scales["x"]?.min !== from || drawn.scales["x"].max !== to) drawn.setScale("x", { min: from, max: to });
  });
  const stopFollowing = shown.subscribe((stretch) => {
    drawn.over.classList.toggle("movable", !same(stretch, whole));
    redraw.ask();
  });
  const stopGestures = listenToGestures(drawn.over, shown, whole);
  const resized = new ResizeObserver(() => {
    if (element.clientWidth > 0 && element.clientWidth !== drawn.width) drawn.setSize({ width: element.clientWidth, height });
  });
  resized.observe(element);
  const scheme = matchMedia("(prefers-color-scheme: dark)");
  const recolour = () => {
    inks.forget();
    now.ground.forget();
    drawn.redraw(false, true);
  };
  scheme.addEventListener("change", recolour);
  return {
    show: (trace) => {
      if (trace === now.trace) return;
      now = drawnOf(trace, inks);
      drawn.setData(now.columns as uPlot.AlignedData);
    },
    end: () => {
      scheme.removeEventListener("change", recolour);
      resized.disconnect();
      stopGestures();
      stopFollowing();
      redraw.stop();
      drawn.destroy();
    },
  };
}

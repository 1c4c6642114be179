import type { Signal } from "@preact/signals";
import { useEffect, useRef, useState } from "preact/hooks";
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { paintBands } from "./band_paint";
import { dragToMove } from "./drag_to_move";
import { paintBorders, paintPricks } from "./mark_paint";
import type { Stretched } from "./replies";
import { type Stretch, within } from "./stretch";
import { civilTime, legible } from "./tick_choice";
import { columnsOf, levelText, mergedWears } from "./trace_rows";
import { words } from "./words";

interface Props {
  trace: Stretched;
  shown: Signal<Stretch>;
  whole: Stretch;
}

const leftRoom = 64;
const rightRoom = 30;

function colourOf(name: string): string {
  return getComputedStyle(document.documentElement).getPropertyValue(name).trim();
}

/** Room above and below what is drawn; at least from the lowest to the highest edge. */
function levels(trace: Stretched): [number, number] {
  const edges = trace.band_edges;
  const values = trace.wears.flatMap((wear) => wear.value.filter((value): value is number => value !== null));
  for (const prick of trace.finger_pricks) values.push(prick.value);
  const low = values.reduce((a, b) => Math.min(a, b), edges[0] ?? 0);
  const high = values.reduce((a, b) => Math.max(a, b), edges[edges.length - 1] ?? 1);
  const room = (high - low) * 0.06;
  return [low - room, high + room];
}

export function TracePlot({ trace, shown, whole }: Props) {
  const holder = useRef<HTMLDivElement>(null);
  const plot = useRef<uPlot | null>(null);
  const [under, setUnder] = useState("");

  useEffect(() => {
    const element = holder.current;
    if (!element) return;
    const rows = mergedWears(trace);
    const tickList = (self: uPlot) => legible(trace, shown.peek(), self.width - leftRoom - rightRoom);
    const text = () => colourOf("--text");
    const font = "12px Inter, 'Noto Sans', sans-serif";
    const options: uPlot.Options = {
      width: element.clientWidth,
      height: 300,
      padding: [8, rightRoom, 0, 0],
      legend: { show: false },
      cursor: { drag: { x: true, y: false, setScale: false }, y: false },
      scales: {
        x: { time: false, range: () => [shown.peek().from, shown.peek().to] },
        y: { range: levels(trace) },
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
          splits: () => trace.band_edges,
          values: () => trace.band_edges.map((edge) => levelText(edge, trace.unit)),
          stroke: text,
          font,
          grid: { stroke: () => colourOf("--line"), width: 1, dash: [4, 3] },
          ticks: { show: false },
        },
      ],
      series: [
        {},
        ...trace.wears.map((wear, which) => ({
          label: wear.label,
          stroke: text,
          width: 2,
          ...(which > 0 ? { dash: [6, 3] } : {}),
          points: { size: 5 },
        })),
      ],
      hooks: {
        drawClear: [(self) => paintBands(self, trace.band_edges, trace.bands, colourOf)],
        draw: [(self) => paintBorders(self, trace, shown.peek(), colourOf), (self) => paintPricks(self, trace, shown.peek(), colourOf)],
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
            const row = self.cursor.idx == null ? undefined : rows[self.cursor.idx];
            const told = row?.told.filter((text) => text !== "") ?? [];
            setUnder(row && told.length > 0 ? `${row.label || civilTime(trace, row.at)}: ${told.join(", ")}` : "");
          },
        ],
      },
    };
    const drawn = new uPlot(options, columnsOf(trace) as uPlot.AlignedData, element);
    plot.current = drawn;
    const stopDragging = dragToMove(drawn.over, shown, whole);
    const resized = new ResizeObserver(() => {
      if (element.clientWidth > 0) drawn.setSize({ width: element.clientWidth, height: 300 });
    });
    resized.observe(element);
    const scheme = matchMedia("(prefers-color-scheme: dark)");
    const recolour = () => drawn.redraw(false, true);
    scheme.addEventListener("change", recolour);
    return () => {
      scheme.removeEventListener("change", recolour);
      resized.disconnect();
      stopDragging();
      drawn.destroy();
      plot.current = null;
    };
  }, [trace, whole.from, whole.to]);

  useEffect(() => {
    plot.current?.setScale("x", { min: shown.value.from, max: shown.value.to });
  }, [shown.value.from, shown.value.to, trace]);

  return (
    <>
      <p class="under" aria-hidden="true">
        {under || words.day.nothingUnder}
      </p>
      <div class="plot" ref={holder} aria-hidden="true" />
    </>
  );
}

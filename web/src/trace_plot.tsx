import type { Signal } from "@preact/signals";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { drawTrace, type DrawnTrace } from "./drawn_trace";
import type { Stretch } from "./stretch";
import { linesOf, type ReadTrace } from "./trace_rows";
import { words } from "./words";

interface Props {
  trace: ReadTrace;
  shown: Signal<Stretch>;
  whole: Stretch;
}

export function TracePlot({ trace, shown, whole }: Props) {
  const holder = useRef<HTMLDivElement>(null);
  const drawn = useRef<DrawnTrace | null>(null);
  const [under, setUnder] = useState("");
  const lines = linesOf(trace).length;

  useLayoutEffect(() => {
    if (!holder.current) return;
    const begun = drawTrace(holder.current, trace, shown, whole, setUnder);
    drawn.current = begun;
    return () => begun.end();
  }, [lines, whole.from, whole.to]);

  useLayoutEffect(() => drawn.current?.show(trace), [trace]);

  return (
    <>
      <div class="above-plot" aria-hidden="true">
        <span class="axis-unit">{trace.unit}</span>
        <p class="under">{under || words.day.nothingUnder}</p>
      </div>
      <div class="plot" ref={holder} aria-hidden="true" />
    </>
  );
}

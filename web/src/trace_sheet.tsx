import { useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { Lanes } from "./lanes";
import type { Stretched } from "./replies";
import { moved, same, scaled, type Stretch, within } from "./stretch";
import { StretchShown } from "./stretch_shown";
import { TracePlot } from "./trace_plot";
import { unfolded } from "./trace_rows";
import { TraceTables } from "./trace_tables";
import { words } from "./words";

interface Props {
  trace: Stretched;
  whole: Stretch;
  /** Asks for each reading, where the trace has the extremes of each hour only. */
  lookCloser?: (() => void) | null;
}

/** Up to here the extremes of an hour stand closer than the screen's pixels, seconds. */
const extremesSuffice = 30 * 86_400;

/** How a key changes the stretch on the screen; null: it doesn't. */
export function afterKey(key: string, shown: Stretch, whole: Stretch): Stretch | null {
  if (key === "ArrowLeft") return moved(shown, -0.25, whole);
  if (key === "ArrowRight") return moved(shown, 0.25, whole);
  if (key === "+" || key === "=") return scaled(shown, 0.5, whole);
  if (key === "-") return scaled(shown, 2, whole);
  if (key === "0") return whole;
  return null;
}

/** The trace, its marks, and the lanes aligned under it, all on one stretch of time. */
export function TraceSheet({ trace: reply, whole, lookCloser = null }: Props) {
  const trace = useMemo(() => unfolded(reply), [reply]);
  const shown = useSignal<Stretch>(whole);

  // A fresh reading of the same stretch stays where it was.
  useEffect(() => {
    const stays = within(shown.peek(), whole);
    if (!same(stays, shown.peek())) shown.value = stays;
  }, [whole.from, whole.to]);

  useEffect(
    () =>
      shown.subscribe(({ from, to }) => {
        if (to - from < extremesSuffice) lookCloser?.();
      }),
    [lookCloser === null],
  );

  const press = (event: KeyboardEvent) => {
    const next = afterKey(event.key, shown.peek(), whole);
    if (!next || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    shown.value = next;
  };

  return (
    <section class="trace-sheet" aria-labelledby="trace-title">
      <h2 id="trace-title" class="unseen">
        {words.day.trace}
      </h2>
      <div
        class="sheet"
        role="group"
        tabIndex={0}
        aria-label={words.day.traceTold(trace.unit)}
        aria-describedby="trace-hint"
        onKeyDown={press}
      >
        <TracePlot trace={trace} shown={shown} whole={whole} />
        <Lanes trace={trace} shown={shown} />
      </div>
      <p class="sheet-keys">
        <button type="button" onClick={() => (shown.value = moved(shown.peek(), -0.5, whole))}>
          {words.day.toLeft}
        </button>
        <button type="button" onClick={() => (shown.value = moved(shown.peek(), 0.5, whole))}>
          {words.day.toRight}
        </button>
        <button type="button" onClick={() => (shown.value = scaled(shown.peek(), 0.5, whole))}>
          {words.day.closer}
        </button>
        <button type="button" onClick={() => (shown.value = scaled(shown.peek(), 2, whole))}>
          {words.day.wider}
        </button>
        <button type="button" onClick={() => (shown.value = whole)}>
          {words.day.reset}
        </button>
      </p>
      <StretchShown trace={trace} shown={shown} whole={whole} />
      <p class="hint" id="trace-hint">
        {words.day.hint}
      </p>
      <TraceTables trace={trace} shown={shown} />
    </section>
  );
}

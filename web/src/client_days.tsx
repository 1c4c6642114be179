import { useMemo } from "preact/hooks";
import { ofClient } from "./ask_server";
import { clientViewWords } from "./client_view_words";
import { LastReadingLine } from "./last_reading_line";
import { Loading } from "./loading";
import type { Place } from "./place";
import { useReading } from "./reading";
import type { DaySheet, Trace } from "./replies";
import { TraceSheet } from "./trace_sheet";

/** The days at which the coach turned the screen: one, or the last so many. Null: no place of days. */
function daysAt(here: Place): { path: string; title: string } | null {
  switch (here.at) {
    case "day":
      return { path: `/days/${here.date}`, title: clientViewWords.day };
    case "trace":
      return { path: "/trace?days=14", title: clientViewWords.days(14) };
    case "ninety-days":
      return { path: "/trace?days=90", title: clientViewWords.days(90) };
    default:
      return null;
  }
}

function Sheet({ client, path, title }: { client: string; path: string; title: string }) {
  const { value, problem } = useReading<DaySheet | Trace>(ofClient(client, path), client);
  // What is suspect is told in the coach's terms.
  const trace = useMemo(() => value && { ...value, marks: value.marks.filter(({ kind }) => kind !== "suspect") }, [value]);
  if (!trace) return problem ? null : <Loading text={clientViewWords.loading} />;
  const [heading, whole] = "day" in trace ? [`${title}: ${trace.label}`, trace.day] : [title, trace];
  return (
    <section class="day">
      <h2>{heading}</h2>
      <LastReadingLine last={trace.last_reading} />
      <TraceSheet trace={trace} whole={{ from: whole.begin, to: whole.end }} />
    </section>
  );
}

/** The client's own days, where the screen was turned at them. Live numbers: not with an open eating screen (docs/safety.md, 12). */
export function ClientDays({ client, here, fewerNumbers }: { client: string; here: Place; fewerNumbers: boolean }) {
  const days = daysAt(here);
  return days && !fewerNumbers ? <Sheet key={days.path} client={client} {...days} /> : null;
}

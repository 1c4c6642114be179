import { useMemo } from "preact/hooks";
import { ofClient } from "./ask_server";
import { clientViewWords } from "./client_view_words";
import { LastReadingLine } from "./last_reading_line";
import { Loading } from "./loading";
import type { Place } from "./place";
import { useReading } from "./reading";
import type { DaySheet, Stretched } from "./replies";
import type { Stretch } from "./stretch";
import { useTrace } from "./trace_reading";
import { TraceSheet } from "./trace_sheet";

interface SheetProps {
  heading: string;
  trace: Stretched;
  whole: Stretch;
  lookCloser?: (() => void) | null;
}

function Sheet({ heading, trace: reply, whole, lookCloser = null }: SheetProps) {
  // What is suspect is told in the coach's terms.
  const trace = useMemo(() => ({ ...reply, marks: reply.marks.filter(({ kind }) => kind !== "suspect") }), [reply]);
  return (
    <section class="day">
      <h2>{heading}</h2>
      <LastReadingLine last={trace.last_reading} />
      <TraceSheet trace={trace} whole={whole} lookCloser={lookCloser} />
    </section>
  );
}

function OneDay({ client, date }: { client: string; date: string }) {
  const { value, problem } = useReading<DaySheet>(ofClient(client, `/days/${date}`), client);
  if (!value) return problem ? null : <Loading text={clientViewWords.loading} />;
  const { begin, end } = value.day;
  return <Sheet heading={`${clientViewWords.day}: ${value.label}`} trace={value} whole={{ from: begin, to: end }} />;
}

function LastDays({ client, days }: { client: string; days: 14 | 90 }) {
  const { value, problem, lookCloser } = useTrace(client, days);
  if (!value) return problem ? null : <Loading text={clientViewWords.loading} />;
  const { begin, end } = value;
  return <Sheet heading={clientViewWords.days(days)} trace={value} whole={{ from: begin, to: end }} lookCloser={lookCloser} />;
}

/**
 * The client's own days, where the screen was turned at them: one, or the last so many. Live numbers: not with an open
 * eating screen (docs/safety.md, 12).
 */
export function ClientDays({ client, here, fewerNumbers }: { client: string; here: Place; fewerNumbers: boolean }) {
  if (fewerNumbers) return null;
  switch (here.at) {
    case "day":
      return <OneDay key={here.date} client={client} date={here.date} />;
    case "trace":
      return <LastDays key={14} client={client} days={14} />;
    case "ninety-days":
      return <LastDays key={90} client={client} days={90} />;
    default:
      return null;
  }
}

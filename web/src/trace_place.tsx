import { useMemo } from "preact/hooks";
import { useClientName } from "./client_name";
import { LastReadingLine } from "./last_reading_line";
import { Loading } from "./loading";
import { PlaceLink } from "./place_link";
import { PlaceTitle } from "./place_title";
import { ProblemBox } from "./problem_box";
import { useTrace } from "./trace_reading";
import { TraceSheet } from "./trace_sheet";
import { words } from "./words";

/** The last days on one sheet, to drag and to look closer. */
export function TracePlace({ client, days }: { client: string; days: 14 | 90 }) {
  const { value: trace, problem, again, lookCloser } = useTrace(client, days);
  const name = useClientName(client);
  // Hundreds of marks and entries: not drawn again because the name has come.
  const sheet = useMemo(
    () => trace && <TraceSheet trace={trace} whole={{ from: trace.begin, to: trace.end }} lookCloser={lookCloser} />,
    [trace],
  );
  if (!trace && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!trace) return <Loading text={words.day.loading} />;
  return (
    <article class="day">
      <p class="way">
        <PlaceLink to={{ at: "review", client }}>{words.day.back}</PlaceLink>
        <PlaceLink to={{ at: days === 14 ? "ninety-days" : "trace", client }}>{words.day.lastDays(days === 14 ? 90 : 14)}</PlaceLink>
      </p>
      <PlaceTitle text={words.day.of(name, words.day.lastDays(days))} />
      <LastReadingLine last={trace.last_reading} />
      {sheet}
    </article>
  );
}

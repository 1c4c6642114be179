import { ofClient } from "./ask_server";
import { useClientName } from "./client_name";
import { LastReadingLine } from "./last_reading_line";
import { Loading } from "./loading";
import { PlaceLink } from "./place_link";
import { PlaceTitle } from "./place_title";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";
import type { DayInList, DaySheet } from "./replies";
import { TraceSheet } from "./trace_sheet";
import { words } from "./words";

/** One day: its sentence, its trace, and under it what was eaten, done, slept, felt and taken. */
export function DayPlace({ client, date }: { client: string; date: string }) {
  const { value: day, problem, again } = useReading<DaySheet>(ofClient(client, `/days/${date}`), client);
  const name = useClientName(client);
  const days = useReading<{ days: DayInList[] }>(ofClient(client, "/days"), client).value?.days ?? [];
  if (!day && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!day) return <Loading text={words.day.loading} />;
  const here = days.findIndex((one) => one.date === date);
  const before = here > 0 ? days[here - 1] : undefined;
  const after = here >= 0 ? days[here + 1] : undefined;
  return (
    <article class="day">
      <p class="way">
        <PlaceLink to={{ at: "review", client }}>{words.day.back}</PlaceLink>
        {before && <PlaceLink to={{ at: "day", client, date: before.date }}>{`${words.day.earlier}: ${before.label}`}</PlaceLink>}
        {after && <PlaceLink to={{ at: "day", client, date: after.date }}>{`${words.day.later}: ${after.label}`}</PlaceLink>}
        <PlaceLink to={{ at: "trace", client }}>{words.day.lastDays(14)}</PlaceLink>
      </p>
      <PlaceTitle text={words.day.of(name, day.label)} />
      <p class="lead-line">{day.sentence}</p>
      {day.unlike.length > 0 && (
        <p>
          <b>{words.day.unlike(day.unlike.join(", "))}</b> {words.day.unlikeNote}
        </p>
      )}
      <LastReadingLine last={day.last_reading} />
      <TraceSheet trace={day} whole={{ from: day.day.begin, to: day.day.end }} />
    </article>
  );
}

import { ofClient } from "./ask_server";
import { Loading } from "./loading";
import { PlaceLink } from "./place_link";
import { useReading } from "./reading";
import type { DayInList } from "./replies";
import { words } from "./words";

/** The days of the window, each with its sentence, each opening its day sheet. */
export function ReviewDays({ client }: { client: string }) {
  const { value, problem } = useReading<{ days: DayInList[] }>(ofClient(client, "/days"), client);
  if (problem) return <p class="wrong">{problem.message}</p>;
  if (!value) return <Loading text={words.loading} />;
  return (
    <>
      <p class="quiet">{words.review.daysNote}</p>
      <ol class="days">
        {value.days.map((day) => (
          <li key={day.date}>
            <PlaceLink to={{ at: "day", client, date: day.date }}>{day.label}</PlaceLink>
            <span>
              {day.unlike.length > 0 && <b>{words.day.unlike(day.unlike.join(", "))}</b>} {day.sentence}
            </span>
          </li>
        ))}
      </ol>
      <p class="way">
        <PlaceLink to={{ at: "trace", client }}>{words.day.lastDays(14)}</PlaceLink>
        <PlaceLink to={{ at: "ninety-days", client }}>{words.day.lastDays(90)}</PlaceLink>
      </p>
    </>
  );
}

import { useLayoutEffect, useRef } from "preact/hooks";
import { ofClient } from "./ask_server";
import { Loading } from "./loading";
import { cameFromDay } from "./place";
import { PlaceLink } from "./place_link";
import { useReading } from "./reading";
import type { DayInList } from "./replies";
import { words } from "./words";

/** The days of the window, each with its sentence, each opening its day sheet. */
export function ReviewDays({ client }: { client: string }) {
  const { value, problem } = useReading<{ days: DayInList[] }>(ofClient(client, "/days"), client);
  const list = useRef<HTMLOListElement>(null);
  const came = useRef(cameFromDay.value);
  // Back from a day, the keyboard stands where it was; a coach who has begun with something else is left to it.
  useLayoutEffect(() => {
    if (!value || !came.current) return;
    const link = list.current?.querySelector<HTMLElement>(`a[data-date="${came.current}"]`);
    came.current = null;
    if (document.activeElement === document.body || document.activeElement?.tagName === "H1") link?.focus();
  }, [value]);

  if (problem) return <p class="wrong">{problem.message}</p>;
  if (!value) return <Loading text={words.loading} />;
  return (
    <>
      <p class="quiet">{words.review.daysNote}</p>
      <ol class="days" ref={list}>
        {value.days.map((day) => (
          <li key={day.date}>
            <PlaceLink to={{ at: "day", client, date: day.date }} data-date={day.date}>{day.label}</PlaceLink>
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

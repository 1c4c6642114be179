import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { ClientAge } from "./client_age";
import { useClientName } from "./client_name";
import { ClientPlaces } from "./client_places";
import { DayEntries } from "./day_entries";
import type { DiaryDay } from "./diary_replies";
import { diaryWords as texts } from "./diary_words";
import { Escalations } from "./escalations";
import { Loading } from "./loading";
import { goTo } from "./place";
import { PlaceLink } from "./place_link";
import { PlaceTitle } from "./place_title";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";
import { WriteEntries } from "./write_entries";

/** One day of the diary: what is written down, and writing more, by keyboard alone. */
export function DiaryPlace({ client, date }: { client: string; date: string }) {
  const { value: day, problem, again } = useReading<DiaryDay>(ofClient(client, `/diary/${date}`), client);
  const name = useClientName(client);
  const [last, setLast] = useState<number | null>(null);
  if (!day && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!day) return <Loading text={texts.loading} />;
  const changed = (made: number | null) => {
    setLast(made);
    again();
  };
  return (
    <article class="diary">
      <ClientPlaces client={client} />
      <PlaceTitle text={texts.of(name, day.label)} focus={false} />
      <ClientAge client={client} />
      {problem && <p class="wrong">{problem.message}</p>}
      <p class="way">
        <PlaceLink to={{ at: "diary", client, date: day.before }}>{texts.before}</PlaceLink>
        {day.after && <PlaceLink to={{ at: "diary", client, date: day.after }}>{texts.after}</PlaceLink>}
        <span>
          <label for="diary-day" class="beside">
            {texts.day}
          </label>{" "}
          <input
            id="diary-day"
            type="date"
            value={day.date}
            onChange={(event) => {
              const next = event.currentTarget.value;
              if (/^\d{4}-\d{2}-\d{2}$/.test(next)) goTo({ at: "diary", client, date: next });
            }}
          />
        </span>
        <PlaceLink to={{ at: "day", client, date: day.date }}>{texts.sheet}</PlaceLink>
      </p>
      {day.eating_note && <p class="quiet">{day.eating_note}</p>}
      <WriteEntries key={day.date} client={client} date={day.date} changed={changed} />
      {last !== null && <Escalations client={client} waiting />}
      <DayEntries client={client} day={day} last={last} changed={changed} />
    </article>
  );
}

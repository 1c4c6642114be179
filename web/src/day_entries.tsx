import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import type { DiaryDay, DiaryEntry } from "./diary_replies";
import { diaryWords } from "./diary_words";
import { EntryCorrection } from "./entry_correction";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { MealPhotos } from "./meal_photos";

const texts = diaryWords.entries;

interface Props {
  client: string;
  day: DiaryDay;
  /** The import made last here, which can be taken back. */
  last: number | null;
  changed: (made: number | null) => void;
}

type Doing = { id: number; what: "correct" | "strike" } | null;

/** The entries of a day, each corrected or struck out, and the last deed taken back. */
export function DayEntries({ client, day, last, changed }: Props) {
  const { told, wrong, keep } = useKeeping<{ import: number }>();
  const [doing, setDoing] = useState<Doing>(null);
  const of = (entry: DiaryEntry, rest: string) => ofClient(client, `/diary/entries/${entry.id}/${rest}`);
  const done = (reply: { import: number }) => {
    setDoing(null);
    changed(reply.import);
  };
  const undo = async () => {
    if (last !== null && (await keep(ofClient(client, `/imports/${last}/undo`), {}, texts.undone))) changed(null);
  };
  return (
    <section aria-labelledby="entries-title">
      <h2 id="entries-title">{texts.title}</h2>
      <KeptLine told={told} wrong={wrong} />
      {last !== null && (
        <button type="button" onClick={() => void undo()}>
          {texts.undo}
        </button>
      )}
      {day.entries.length === 0 && <p class="quiet">{texts.none}</p>}
      <ol class="plain-list entries">
        {day.entries.map((entry) => (
          <li key={entry.id}>
            <b>
              {entry.time}
              {entry.time_uncertain && "?"}
            </b>{" "}
            <span class="quiet">{diaryWords.kinds[entry.kind] ?? entry.kind}</span> {entry.words}{" "}
            {entry.corrected && <span class="quiet">({texts.corrected}) </span>}
            {doing?.id !== entry.id && (
              <span class="actions">
                <button type="button" aria-label={texts.correctOf(entry.words)} onClick={() => setDoing({ id: entry.id, what: "correct" })}>
                  {texts.correct}
                </button>
                <button type="button" aria-label={texts.strikeOf(entry.words)} onClick={() => setDoing({ id: entry.id, what: "strike" })}>
                  {texts.strike}
                </button>
              </span>
            )}
            {doing?.id === entry.id && doing.what === "correct" && (
              <EntryCorrection
                form={entry.form}
                keep={(form) => void keep(of(entry, "correct"), form, texts.isCorrected, done)}
                cancel={() => setDoing(null)}
              />
            )}
            {doing?.id === entry.id && doing.what === "strike" && (
              <div role="alert">
                <p>{texts.ask(entry.words)}</p>
                <p class="actions">
                  <button type="button" onClick={() => void keep(of(entry, "strike"), {}, texts.struck, done)}>
                    {texts.yes}
                  </button>
                  <button type="button" onClick={() => setDoing(null)}>
                    {texts.no}
                  </button>
                </p>
              </div>
            )}
            {(entry.kind === "meal" || entry.photos.length > 0) && (
              <MealPhotos client={client} entry={entry} most={day.most_photos} changed={() => changed(last)} />
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}

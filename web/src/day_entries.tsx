import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import type { DiaryDay, DiaryEntry, EntryForm } from "./diary_replies";
import { diaryWords } from "./diary_words";
import { EntryCorrection } from "./entry_correction";
import { useGivenBack, useTaken } from "./given_back";
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

interface ItemProps {
  entry: DiaryEntry;
  doing: Doing;
  setDoing: (doing: Doing) => void;
  correct: (form: EntryForm) => void;
  strike: () => void;
  photos: ComponentChildren;
}

/** One entry; the keyboard goes to what is asked of it, and back to its button when that is put away. */
function EntryItem({ entry, doing, setDoing, correct, strike, photos }: ItemProps) {
  const corrects = doing?.id === entry.id && doing.what === "correct";
  const strikes = doing?.id === entry.id && doing.what === "strike";
  const correctButton = useGivenBack(corrects);
  const strikeButton = useGivenBack(strikes);
  const yes = useTaken<HTMLButtonElement>(strikes);
  return (
    <li>
      <b>
        {entry.time}
        {entry.time_uncertain && "?"}
      </b>{" "}
      <span class="quiet">{diaryWords.kinds[entry.kind] ?? entry.kind}</span> {entry.words}{" "}
      {entry.corrected && <span class="quiet">({texts.corrected}) </span>}
      {!corrects && !strikes && (
        <span class="actions">
          <button ref={correctButton} type="button" aria-label={texts.correctOf(entry.words)} onClick={() => setDoing({ id: entry.id, what: "correct" })}>
            {texts.correct}
          </button>
          <button ref={strikeButton} type="button" aria-label={texts.strikeOf(entry.words)} onClick={() => setDoing({ id: entry.id, what: "strike" })}>
            {texts.strike}
          </button>
        </span>
      )}
      {corrects && <EntryCorrection form={entry.form} keep={correct} cancel={() => setDoing(null)} />}
      {strikes && (
        <div role="alert">
          <p>{texts.ask(entry.words)}</p>
          <p class="actions">
            <button ref={yes} type="button" onClick={strike}>
              {texts.yes}
            </button>
            <button type="button" onClick={() => setDoing(null)}>
              {texts.no}
            </button>
          </p>
        </div>
      )}
      {photos}
    </li>
  );
}

/** The entries of a day, each corrected or struck out, and the last deed taken back. */
export function DayEntries({ client, day, last, changed }: Props) {
  const { told, wrong, keep } = useKeeping<{ import: number }>();
  const [doing, setDoing] = useState<Doing>(null);
  const section = useRef<HTMLElement>(null);
  // What was pressed may be gone with its entry: the keyboard goes to what can be taken back, or to the title.
  useLayoutEffect(() => {
    if (told !== "" && document.activeElement === document.body)
      section.current?.querySelector<HTMLElement>(last === null ? "h2" : "button.take-back")?.focus();
  }, [last, told, day]);
  const of = (entry: DiaryEntry, rest: string) => ofClient(client, `/diary/entries/${entry.id}/${rest}`);
  const done = (reply: { import: number }) => {
    setDoing(null);
    changed(reply.import);
  };
  const undo = async () => {
    if (last !== null && (await keep(ofClient(client, `/imports/${last}/undo`), {}, texts.undone))) changed(null);
  };
  return (
    <section ref={section} aria-labelledby="entries-title">
      <h2 id="entries-title" tabIndex={-1}>
        {texts.title}
      </h2>
      <KeptLine told={told} wrong={wrong} />
      {last !== null && (
        <button type="button" class="take-back" onClick={() => void undo()}>
          {texts.undo}
        </button>
      )}
      {day.entries.length === 0 && <p class="quiet">{texts.none}</p>}
      <ol class="plain-list entries">
        {day.entries.map((entry) => (
          <EntryItem
            key={entry.id}
            entry={entry}
            doing={doing}
            setDoing={setDoing}
            correct={(form) => void keep(of(entry, "correct"), form, texts.isCorrected, done)}
            strike={() => void keep(of(entry, "strike"), {}, texts.struck, done)}
            photos={
              (entry.kind === "meal" || entry.photos.length > 0) && (
                <MealPhotos client={client} entry={entry} most={day.most_photos} changed={() => changed(last)} />
              )
            }
          />
        ))}
      </ol>
    </section>
  );
}

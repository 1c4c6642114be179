import { useState } from "preact/hooks";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { Loading } from "./loading";
import { PlaceTitle } from "./place_title";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";
import { WritingChoice } from "./writing_choice";
import type { WayOfWriting, Writing } from "./writing_replies";
import { writingWords as texts } from "./writing_words";

const path = "/api/writing";

/** How the practice writes dates, times of day and, until a client is asked, glucose. */
export function WritingPlace() {
  const { value, problem, again } = useReading<Writing>(path, null);
  const { told, wrong, keep } = useKeeping();
  const [before, setBefore] = useState<WayOfWriting | null>(null);
  if (!value && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!value) return <Loading text={texts.loading} />;
  const { samples, ...now } = value;
  const write = async (next: WayOfWriting, done: string, undoTo: WayOfWriting | null) => {
    if (await keep(path, next, done)) setBefore(undoTo);
    again();
  };
  const change = (part: Partial<WayOfWriting>) => void write({ ...now, ...part }, texts.kept, now);
  return (
    <article class="writing">
      <PlaceTitle text={texts.title} />
      <p>{texts.lead}</p>
      {problem && <p class="wrong">{problem.message}</p>}
      <WritingChoice
        name="dates"
        title={texts.dates}
        choices={Object.entries(samples.dates).map(([way, sample]) => [way, texts.such(texts.datesNamed[way] ?? way, sample)])}
        chosen={now.dates}
        choose={(dates) => change({ dates })}
      />
      <WritingChoice
        name="hours"
        title={texts.hours}
        choices={["24", "12"].map((way) => [way, texts.such(texts.hoursNamed[way] ?? way, samples.hours[way] ?? "")])}
        chosen={now.hours}
        choose={(hours) => change({ hours })}
      />
      <WritingChoice
        name="glucose"
        title={texts.glucose}
        hint={texts.glucoseHint}
        choices={["mg/dL", "mmol/L"].map((unit) => [unit, unit])}
        chosen={now.glucose}
        choose={(glucose) => change({ glucose })}
      />
      <KeptLine told={told} wrong={wrong} />
      {before && (
        <button type="button" onClick={() => void write(before, texts.undone, null)}>
          {texts.undo}
        </button>
      )}
    </article>
  );
}

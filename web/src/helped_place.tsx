import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { ChangeHelped } from "./change_helped";
import { inWords } from "./change_in_words";
import { useClientName } from "./client_name";
import { ClientPlaces } from "./client_places";
import { CompareWears } from "./compare_wears";
import { FindingBox } from "./finding_box";
import type { Story } from "./helped_replies";
import { helpedWords } from "./helped_words";
import { LastReadingLine } from "./last_reading_line";
import { Loading } from "./loading";
import { PlaceTitle } from "./place_title";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";
import { StorySoFar } from "./story_so_far";

/** Before and after, laboratory, the way to the remission criteria, and the story over all wears. */
export function HelpedPlace({ client }: { client: string }) {
  const [diet, setDiet] = useState("");
  const [surgery, setSurgery] = useState("");
  const waits = `?${new URLSearchParams({ diet_started: diet, surgery_on: surgery }).toString()}`;
  const { value: story, problem, again } = useReading<Story>(ofClient(client, `/story${waits}`), client);
  const name = useClientName(client);
  const [last, setLast] = useState<Story | null>(null);
  if (story && story !== last) setLast(story);
  // While a date is asked anew the old answer stands, so that the form is not lost.
  const shown = story ?? last;
  if (!shown && problem?.code === "no_readings") {
    return (
      <article class="review">
        <ClientPlaces client={client} />
        <PlaceTitle text={helpedWords.of(name)} />
        <LastReadingLine last={null} />
        <p class="empty">{helpedWords.noReadings}</p>
      </article>
    );
  }
  if (!shown && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!shown) return <Loading text={helpedWords.loading} />;
  return (
    <article class="review">
      <ClientPlaces client={client} />
      <PlaceTitle text={helpedWords.of(name)} />
      {shown.very_low !== null && <p class="wrong">{shown.very_low}</p>}
      <LastReadingLine last={shown.last_reading} />
      {shown.care.map((sentence) => (
        <p class="wrong" key={sentence}>
          {sentence}
        </p>
      ))}
      {problem && <p class="wrong">{problem.message}</p>}
      <h2>{helpedWords.changes}</h2>
      {shown.changes.length === 0 && <p>{helpedWords.noChange}</p>}
      {shown.changes.map((one, at) => (
        <ChangeHelped key={at} helped={{ ...one, change: inWords(one.change, shown.day_words) }} />
      ))}
      <CompareWears client={client} wears={shown.wears} lastTwo={shown.last_two_wears} />
      <h2>{helpedWords.labs}</h2>
      {shown.labs.findings.map((finding) => (
        <FindingBox key={finding.question} finding={finding} />
      ))}
      <p class="next">{shown.next_lab_words}</p>
      <details>
        <summary>{helpedWords.waits.title}</summary>
        <p class="hint">{helpedWords.waits.note}</p>
        <div class="two-fields">
          <p>
            <label for="diet-started">{helpedWords.waits.diet}</label>
            <input id="diet-started" type="date" value={diet} onChange={(event) => setDiet(event.currentTarget.value)} />
          </p>
          <p>
            <label for="surgery-on">{helpedWords.waits.surgery}</label>
            <input id="surgery-on" type="date" value={surgery} onChange={(event) => setSurgery(event.currentTarget.value)} />
          </p>
        </div>
      </details>
      <StorySoFar client={client} story={shown} waits={waits} />
    </article>
  );
}

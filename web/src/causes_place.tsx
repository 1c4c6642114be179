import { AskInWords } from "./ask_in_words";
import { ofClient } from "./ask_server";
import { causesWords } from "./causes_words";
import { useClientName } from "./client_name";
import { ClientPlaces } from "./client_places";
import { LastReadingLine } from "./last_reading_line";
import { Loading } from "./loading";
import { MealsBox } from "./meals_box";
import { PlaceTitle } from "./place_title";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";
import type { Trials } from "./trial_replies";
import { TrialsBox } from "./trials_box";

/** Questions in words, meals, and trials. */
export function CausesPlace({ client }: { client: string }) {
  const { value: trials, problem, again } = useReading<Trials>(ofClient(client, "/trials"), client);
  const name = useClientName(client);
  if (!trials && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!trials) return <Loading text={causesWords.loading} />;
  return (
    <article class="review">
      <ClientPlaces client={client} />
      <PlaceTitle text={causesWords.of(name)} />
      <LastReadingLine last={trials.last_reading} />
      {!trials.last_reading && <p class="empty">{causesWords.noReadings}</p>}
      {trials.last_reading && <AskInWords client={client} />}
      {trials.last_reading && <MealsBox client={client} />}
      <TrialsBox client={client} trials={trials} again={again} />
    </article>
  );
}

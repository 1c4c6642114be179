import { ofClient } from "./ask_server";
import { useClientName } from "./client_name";
import { ClientPlaces } from "./client_places";
import { Escalations } from "./escalations";
import { FindingBox } from "./finding_box";
import { Loading } from "./loading";
import { NoReadings } from "./no_readings";
import { PlaceTitle } from "./place_title";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";
import type { Finding, Review } from "./replies";
import { ReviewActions } from "./review_actions";
import { ReviewDepths } from "./review_depths";
import { ReviewFirstPage } from "./review_first_page";
import { words } from "./words";

/** What leads whatever else was found (docs/safety.md, 2). */
const leading = new Set(["very_low", "very_high", "escalation"]);
export const leads = (finding: Finding): boolean => leading.has(finding.code);

/** One client's review, read from top to bottom. */
export function ReviewPlace({ client }: { client: string }) {
  const { value: review, problem, again } = useReading<Review>(ofClient(client, "/review"), client);
  const name = useClientName(client);
  if (!review && problem?.code === "no_readings") return <NoReadings client={client} name={name} />;
  if (!review && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!review) return <Loading text={words.review.loading} />;
  return (
    <article class="review">
      <ClientPlaces client={client} />
      <PlaceTitle text={words.review.of(name)} />
      <p class="age">{review.last_reading}</p>
      <ReviewActions client={client} />
      {problem && <p class="wrong">{problem.message}</p>}
      {review.findings.filter(leads).map((finding, at) => (
        <FindingBox key={at} finding={finding} leads />
      ))}
      <Escalations client={client} />
      <ReviewFirstPage review={review} findings={review.findings.filter((finding) => !leads(finding))} />
      <ReviewDepths client={client} review={review} />
    </article>
  );
}

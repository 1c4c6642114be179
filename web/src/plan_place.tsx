import { AgreedNow } from "./agreed_now";
import { AgreeOther } from "./agree_form";
import { ofClient } from "./ask_server";
import { CandidateList } from "./candidate_list";
import { inWords } from "./change_in_words";
import { useClientName } from "./client_name";
import { ClientPlaces } from "./client_places";
import { ClosedList } from "./closed_list";
import { EarlierChanges } from "./earlier_changes";
import { LastReadingLine } from "./last_reading_line";
import { Loading } from "./loading";
import { PapersBox } from "./papers_box";
import { PlaceTitle } from "./place_title";
import type { Plan } from "./plan_replies";
import { planWords } from "./plan_words";
import { ProblemBox } from "./problem_box";
import { PromiseList } from "./promise_list";
import { useReading } from "./reading";
import { openWords } from "./words_panel_state";
import { words } from "./words";

/** The plan: what is agreed, what might be, what may not be offered; papers and promises. */
export function PlanPlace({ client }: { client: string }) {
  const { value: plan, problem, again } = useReading<Plan>(ofClient(client, "/plan"), client);
  const name = useClientName(client);
  if (!plan && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!plan) return <Loading text={planWords.loading} />;
  return (
    <article class="review plan">
      <ClientPlaces client={client} />
      <PlaceTitle text={planWords.of(name)} />
      <LastReadingLine last={plan.last_reading} />
      {problem && <p class="wrong">{problem.message}</p>}
      <h2>{planWords.agreed}</h2>
      <AgreedNow client={client} agreed={plan.agreed && inWords(plan.agreed, plan.day_words)} closed={plan.agreed_closed} />
      <h2>{planWords.candidates}</h2>
      <p class="lead-line">{plan.sentence}</p>
      <CandidateList client={client} plan={plan} />
      {plan.ranked.length > 0 && !plan.agreed && <AgreeOther client={client} plan={plan} />}
      <ClosedList client={client} closed={plan.closed} />
      <EarlierChanges earlier={plan.earlier.map((change) => inWords(change, plan.day_words))} />
      <h2>{planWords.promises}</h2>
      <PromiseList client={client} />
      <p class="actions">
        <button type="button" onClick={() => openWords({ what: "promises", client })}>
          {words.promises.add} <kbd>p</kbd>
        </button>
      </p>
      <PapersBox client={client} />
    </article>
  );
}

import { useState } from "preact/hooks";
import { AgreeForm } from "./agree_form";
import { useGivenBack } from "./given_back";
import type { Candidate, Plan } from "./plan_replies";
import { planWords } from "./plan_words";

/** One candidate: what it may bring first, then effort and cautions; what that rests on behind a disclosure. */
function CandidateItem({ client, plan, candidate }: { client: string; plan: Plan; candidate: Candidate }) {
  const [agrees, setAgrees] = useState(false);
  const opener = useGivenBack(agrees);
  const [expected, ...others] = candidate.sentences;
  const last = others.slice(-2);
  const behind = others.slice(0, -2);
  return (
    <li class="candidate">
      <h3>{candidate.words}</h3>
      <p class="sentence">{expected}</p>
      {last.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {candidate.cautions.length > 0 && (
        <ul>
          {candidate.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      )}
      {behind.length > 0 && (
        <details>
          <summary>
            {planWords.behind}
            <span class="unseen">: {candidate.words}</span>
          </summary>
          {behind.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </details>
      )}
      {!plan.agreed && !agrees && (
        <button ref={opener} type="button" aria-label={`${planWords.agree.open}: ${candidate.words}`} onClick={() => setAgrees(true)}>
          {planWords.agree.open}
        </button>
      )}
      {!plan.agreed && agrees && <AgreeForm client={client} plan={plan} candidate={candidate} done={() => setAgrees(false)} />}
    </li>
  );
}

/** The candidates in the server's order; those that these days don't speak for stand behind a disclosure. */
export function CandidateList({ client, plan }: { client: string; plan: Plan }) {
  if (plan.ranked.length === 0) return null;
  const spoken = plan.ranked.filter((candidate) => candidate.says !== "not_worth_it");
  const others = plan.ranked.filter((candidate) => candidate.says === "not_worth_it");
  const list = (candidates: Candidate[]) => (
    <ol class="candidates">
      {candidates.map((candidate) => (
        <CandidateItem key={candidate.code} client={client} plan={plan} candidate={candidate} />
      ))}
    </ol>
  );
  return (
    <>
      <p class="quiet">{planWords.candidatesNote}</p>
      {spoken.length > 0 && list(spoken)}
      {plan.check && (
        <p class="next">
          {planWords.check}: {plan.check.words}
        </p>
      )}
      {others.length > 0 && (
        <details>
          <summary>{planWords.notNow(others.length)}</summary>
          {list(others)}
        </details>
      )}
    </>
  );
}

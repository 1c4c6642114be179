import { useState } from "preact/hooks";
import { causesWords } from "./causes_words";
import { TrialForm } from "./trial_form";
import { TrialKept } from "./trial_kept";
import type { Trials } from "./trial_replies";

const say = causesWords.trials;

/** Trials kept, then those that may be tried; one behind a closed gate says which and nothing of how. */
export function TrialsBox({ client, trials, again }: { client: string; trials: Trials; again: () => void }) {
  const [plans, setPlans] = useState<string | null>(null);
  const open = trials.templates.filter((one) => one.gates.length === 0);
  const closed = trials.templates.filter((one) => one.gates.length > 0);
  return (
    <section class="trials">
      <h2>{say.title}</h2>
      <p class="quiet">{say.note}</p>
      <h3>{say.kept}</h3>
      {trials.kept.length === 0 && <p class="quiet">{say.none}</p>}
      {trials.kept.map((kept) => (
        <TrialKept key={kept.number} client={client} kept={kept} again={again} />
      ))}
      {open.length > 0 && <h3>{say.offered}</h3>}
      {trials.one_goes_on && open.length > 0 && <p>{say.oneGoesOn}</p>}
      <ul class="closed">
        {open.map((one) => (
          <li key={one.code}>
            <h4>{one.question}</h4>
            <p>{say.arms(one.a, one.b)}</p>
            <p class="quiet">{say.read(one.read, one.keep_alike)}</p>
            {!trials.one_goes_on && trials.last_reading && plans !== one.code && (
              <button type="button" aria-label={`${say.plan}: ${one.question}`} onClick={() => setPlans(one.code)}>
                {say.plan}
              </button>
            )}
            {!trials.one_goes_on && plans === one.code && (
              <TrialForm
                client={client}
                question={one.code}
                today={trials.today}
                done={() => {
                  setPlans(null);
                  again();
                }}
                cancel={() => setPlans(null)}
              />
            )}
          </li>
        ))}
      </ul>
      {closed.length > 0 && (
        <>
          <h3>{say.closed}</h3>
          <ul class="closed">
            {closed.map((one) => (
              <li key={one.code}>
                <h4>{one.question}</h4>
                <ul>
                  {one.gates.map((gate) => (
                    <li key={gate}>{gate}</li>
                  ))}
                </ul>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

import { useState } from "preact/hooks";
import { causesWords } from "./causes_words";
import { TrialOffered } from "./trial_offered";
import { TrialKept } from "./trial_kept";
import type { Trials } from "./trial_replies";

const say = causesWords.trials;

/** Trials kept, then those that may be tried; one behind a closed gate says which and nothing of how. */
export function TrialsBox({ client, trials, again }: { client: string; trials: Trials; again: () => void }) {
  // Those that were there before the last was kept: what comes beside them is new.
  const [before, setBefore] = useState<number[] | null>(null);
  const open = trials.templates.filter((one) => one.gates.length === 0);
  const closed = trials.templates.filter((one) => one.gates.length > 0);
  return (
    <section class="trials">
      <h2>{say.title}</h2>
      <p class="quiet">{say.note}</p>
      <h3>{say.kept}</h3>
      {trials.kept.length === 0 && <p class="quiet">{say.none}</p>}
      {trials.kept.map((kept) => (
        <TrialKept key={kept.number} client={client} kept={kept} fresh={before !== null && !before.includes(kept.number)} again={again} />
      ))}
      {open.length > 0 && <h3>{say.offered}</h3>}
      {trials.one_goes_on && open.length > 0 && <p>{say.oneGoesOn}</p>}
      <ul class="closed">
        {open.map((one) => (
          <TrialOffered
            key={one.code}
            client={client}
            template={one}
            today={trials.today}
            may={!trials.one_goes_on && trials.last_reading !== null}
            done={() => {
              setBefore(trials.kept.map(({ number }) => number));
              again();
            }}
          />
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

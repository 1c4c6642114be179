import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { causesWords } from "./causes_words";
import { useTaken } from "./given_back";
import { TrialDays } from "./trial_days";
import { TrialReading } from "./trial_reading";
import type { KeptTrial } from "./trial_replies";
import { TrialStop } from "./trial_stop";

const say = causesWords.trials;

/** One kept trial: where it stands, its papers, its days, and at its end what it shows. `fresh`: kept just now. */
export function TrialKept({ client, kept, fresh, again }: { client: string; kept: KeptTrial; fresh: boolean; again: () => void }) {
  const heading = useTaken<HTMLHeadingElement>(fresh);
  const [open, setOpen] = useState(kept.state !== "stopped");
  const path = ofClient(client, `/trials/${kept.number}`);
  const ended = kept.state === "ended";
  const closed = kept.gates.length > 0 && (kept.state === "planned" || kept.state === "running");
  return (
    <section class="trial">
      <h4 ref={heading} tabIndex={-1}>
        {kept.question}
      </h4>
      <p class="sentence">{say.line(say.states[kept.state], kept.dates, kept.pairs)}</p>
      {closed && (
        <p class="wrong">
          {say.notGoneOn} {kept.gates.join(" ")}
        </p>
      )}
      {kept.today && <p class="age">{say.today(kept.today)}</p>}
      {kept.not_told > 0 && kept.state !== "stopped" && <p>{say.notTold(kept.not_told)}</p>}
      {kept.stopped && (
        <p>
          {kept.stopped.on}: {kept.stopped.because}
        </p>
      )}
      <p class="actions">
        <button type="button" aria-expanded={open} aria-label={`${open ? say.close : say.open}: ${kept.question}`} onClick={() => setOpen(!open)}>
          {open ? say.close : say.open}
        </button>
        {!closed && (
          <>
            <a href={`${path}/print`} target="_blank" rel="noopener">
              {ended ? say.report : say.calendar}
            </a>
            <a href={`${path}/page`} target="_blank" rel="noopener">
              {ended ? say.reportPage : say.calendarPage}
            </a>
            <a href={`${path}/calendar`} download="trial.ics">
              {say.file}
            </a>
          </>
        )}
      </p>
      {open && (
        <>
          <p>{say.arms(kept.a, kept.b)}</p>
          <p class="quiet">{say.seed(kept.seed)}</p>
          {(ended || kept.state === "stopped") && <TrialReading client={client} number={kept.number} />}
          <TrialDays client={client} kept={kept} again={again} />
          {(kept.state === "planned" || kept.state === "running") && <TrialStop path={path} again={again} />}
        </>
      )}
    </section>
  );
}

import { ofClient } from "./ask_server";
import { causesWords } from "./causes_words";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import type { Done, KeptTrial } from "./trial_replies";

const say = causesWords.trials;
const choices: Done[] = ["a", "b", "neither"];

/** The trial's days: what the lot said, and what the client says was done. Of one day the last telling counts. */
export function TrialDays({ client, kept, again }: { client: string; kept: KeptTrial; again: () => void }) {
  const { busy, told, wrong, keep } = useKeeping();
  const tell = async (day: string, label: string, done: string) => {
    if (done && (await keep(ofClient(client, `/trials/${kept.number}/days`), { day, done }, say.told(label)))) again();
  };
  return (
    <details open={kept.state === "running" || kept.state === "planned"}>
      <summary>
        {say.days}
        <span class="unseen">: {kept.question}</span>
      </summary>
      <ul class="trial-days">
        {kept.days.map(({ day, label, pair, allotted, has_come, done }) => (
          <li key={day}>
            <span class="quiet">{say.pair(pair)}</span> <b>{label}</b> <span>{say.lot(kept[allotted])}</span>{" "}
            {has_come && kept.state !== "stopped" && (
              <select aria-label={say.doneQuestion(label)} aria-disabled={busy} value={done === null || done === "not_known" ? "" : done} onChange={(event) => void tell(day, label, event.currentTarget.value)}>
                <option value="">{say.done.not_known}</option>
                {choices.map((choice) => (
                  <option key={choice} value={choice}>
                    {say.done[choice]}
                  </option>
                ))}
              </select>
            )}
          </li>
        ))}
      </ul>
      <KeptLine told={told} wrong={wrong} />
    </details>
  );
}

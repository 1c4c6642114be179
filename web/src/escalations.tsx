import { ofClient } from "./ask_server";
import { EscalationItem } from "./escalation_item";
import { useReading } from "./reading";
import type { Escalation } from "./replies";
import { words } from "./words";

/**
 * What was escalated: all that wait for an answer, then the answered ones. Nothing here can be put away. `waiting`:
 * only what waits, told aloud where something was just kept.
 */
export function Escalations({ client, waiting = false }: { client: string; waiting?: boolean }) {
  const path = ofClient(client, "/escalations");
  const { value, problem, again } = useReading<{ escalations: Escalation[] }>(path, client);
  if (problem) return <p class="wrong">{problem.message}</p>;
  if (!value || value.escalations.length === 0) return null;
  const open = value.escalations.filter((escalation) => escalation.answer === null);
  if (waiting && open.length === 0) return null;
  if (waiting) open.sort((a, b) => b.id - a.id); // what was just kept leads
  const answered = waiting ? [] : value.escalations.filter((escalation) => escalation.answer !== null);
  return (
    <section role={waiting ? "alert" : undefined} class={open.length > 0 ? "escalations open" : "escalations"} aria-labelledby="escalations-title">
      <h2 id="escalations-title">{words.escalation.title}</h2>
      <p>{open.length > 0 ? words.escalation.open(open.length) : words.escalation.none}</p>
      <ol>
        {open.map((escalation) => (
          <EscalationItem key={escalation.id} path={path} escalation={escalation} answered={again} />
        ))}
      </ol>
      {answered.length > 0 && (
        <details>
          <summary>{words.escalation.earlier(answered.length)}</summary>
          <ol>
            {answered.map((escalation) => (
              <EscalationItem key={escalation.id} path={path} escalation={escalation} answered={again} />
            ))}
          </ol>
        </details>
      )}
    </section>
  );
}

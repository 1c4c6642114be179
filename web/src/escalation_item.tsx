import { useState } from "preact/hooks";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import type { Escalation } from "./replies";
import { session } from "./session";
import { words } from "./words";

interface Props {
  path: string;
  escalation: Escalation;
  answered: () => void;
}

/** One escalation, and the form that answers it with a name and what was done; the server adds the time. */
export function EscalationItem({ path, escalation, answered }: Props) {
  const [asking, setAsking] = useState(false);
  const { busy, told, wrong, keep } = useKeeping();
  const { id, acknowledged } = escalation;

  const submit = async (event: Event) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const answer = { by: String(form.get("by") ?? "").trim(), done: String(form.get("done") ?? "").trim() };
    if (answer.by && answer.done && (await keep(`${path}/${id}/acknowledge`, answer, words.escalation.kept))) {
      setAsking(false);
      answered();
    }
  };

  return (
    <li class="escalation">
      <p>
        <b>{escalation.level}.</b> {escalation.sentence}
      </p>
      {acknowledged === null && escalation.next && <p class="next">{escalation.next}</p>}
      {acknowledged && (
        <p class="quiet">
          {words.escalation.answered(acknowledged.by, acknowledged.at)} {acknowledged.done}
        </p>
      )}
      {acknowledged === null && !asking && (
        <button type="button" aria-label={`${words.escalation.answer}: ${escalation.sentence}`} onClick={() => setAsking(true)}>
          {words.escalation.answer}
        </button>
      )}
      {acknowledged === null && asking && (
        <form onSubmit={(event) => void submit(event)}>
          <label for={`by-${id}`}>{words.escalation.by}</label>
          <input id={`by-${id}`} name="by" required maxLength={200} defaultValue={session.value?.name ?? ""} />
          <label for={`done-${id}`}>{words.escalation.done}</label>
          <textarea id={`done-${id}`} name="done" rows={2} required maxLength={2000} aria-describedby={`hint-${id}`} />
          <p class="hint" id={`hint-${id}`}>
            {words.escalation.doneHint}
          </p>
          <button type="submit" class="main" disabled={busy}>
            {words.escalation.keep}
          </button>{" "}
          <button type="button" onClick={() => setAsking(false)}>
            {words.cancel}
          </button>
        </form>
      )}
      <KeptLine told={told} wrong={wrong} />
    </li>
  );
}

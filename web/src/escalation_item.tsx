import { useState } from "preact/hooks";
import { useGivenBack, useTaken } from "./given_back";
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
  const opener = useGivenBack(asking);
  const field = useTaken<HTMLTextAreaElement>(asking);
  const { busy, told, wrong, keep } = useKeeping();
  const { id, answer } = escalation;

  const submit = async (event: Event) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const given = { by: String(form.get("by") ?? "").trim(), done: String(form.get("done") ?? "").trim() };
    if (given.by && given.done && (await keep(`${path}/${id}/acknowledge`, given, words.escalation.kept))) {
      setAsking(false);
      answered();
    }
  };

  return (
    <li class="escalation">
      <p>
        <b>{escalation.rung}.</b> {escalation.sentence}
      </p>
      {answer !== null && <p class="quiet">{answer}</p>}
      {answer === null && !asking && (
        <button ref={opener} type="button" aria-label={`${words.escalation.answer}: ${escalation.sentence}`} onClick={() => setAsking(true)}>
          {words.escalation.answer}
        </button>
      )}
      {answer === null && asking && (
        <form onSubmit={(event) => void submit(event)}>
          <label for={`by-${id}`}>{words.escalation.by}</label>
          <input id={`by-${id}`} name="by" required maxLength={200} defaultValue={session.value?.name ?? ""} />
          <label for={`done-${id}`}>{words.escalation.done}</label>
          <textarea ref={field} id={`done-${id}`} name="done" rows={2} required maxLength={2000} aria-describedby={`hint-${id}`} />
          <p class="hint" id={`hint-${id}`}>
            {words.escalation.doneHint}
          </p>
          <button type="submit" class="main" aria-disabled={busy}>
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

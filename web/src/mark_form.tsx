import { ofClient } from "./ask_server";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { trustWords } from "./trust_words";

const texts = trustWords.mark;

/** A stretch that the coach knows to be suspect, by the client's clock. */
export function MarkForm({ client, again }: { client: string; again: () => void }) {
  const { busy, told, wrong, keep } = useKeeping();
  const submit = async (event: Event) => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const part = (name: string) => String(new FormData(form).get(name) ?? "").trim();
    const body = { from: part("from"), to: part("to"), why: part("why") };
    if (await keep(ofClient(client, "/stretches"), body, trustWords.stretches.isMarked)) {
      form.reset();
      again();
    }
  };
  return (
    <section>
      <h2>{texts.title}</h2>
      <form onSubmit={(event) => void submit(event)}>
        <label for="mark-from">{texts.from}</label>
        <input id="mark-from" name="from" type="datetime-local" required aria-describedby="mark-hint" />
        <label for="mark-to">{texts.to}</label>
        <input id="mark-to" name="to" type="datetime-local" required aria-describedby="mark-hint" />
        <label for="mark-why">{texts.why}</label>
        <input id="mark-why" name="why" required maxLength={500} aria-describedby="mark-hint" />
        <p class="hint" id="mark-hint">
          {texts.hint}
        </p>
        <button type="submit" class="main" aria-disabled={busy}>
          {texts.go}
        </button>
        <KeptLine told={told} wrong={wrong} />
      </form>
    </section>
  );
}

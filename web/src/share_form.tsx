import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import type { ShareGiven, Shares } from "./shares_replies";
import { sharesWords } from "./shares_words";

const texts = sharesWords.give;

interface Props {
  client: string;
  known: Shares;
  given: (one: ShareGiven) => void;
}

/** Whom, what for, what they see, how far back, until when. */
export function ShareForm({ client, known, given }: Props) {
  const { busy, told, wrong, keep } = useKeeping<ShareGiven>();
  const [nothing, setNothing] = useState(false);
  const submit = async (event: Event) => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const data = new FormData(form);
    const part = (name: string) => String(data.get(name) ?? "").trim();
    const kinds = data.getAll("kind").join(", ");
    setNothing(kinds === "");
    // Without a kind the server would take the usual ones, which nobody chose here.
    if (kinds === "") return;
    const body = { recipient: part("recipient"), purpose: part("purpose"), kinds, days: part("days"), until: part("until") };
    if (await keep(ofClient(client, "/shares"), body, texts.done, given)) form.reset();
  };
  return (
    <section>
      <h2>{texts.title}</h2>
      <form onSubmit={(event) => void submit(event)}>
        <label for="share-recipient">{texts.recipient}</label>
        <input id="share-recipient" name="recipient" required maxLength={200} aria-describedby="share-recipient-hint" />
        <p class="hint" id="share-recipient-hint">
          {texts.recipientHint}
        </p>
        <label for="share-purpose">{texts.purpose}</label>
        <input id="share-purpose" name="purpose" required maxLength={200} aria-describedby="share-purpose-hint" />
        <p class="hint" id="share-purpose-hint">
          {texts.purposeHint}
        </p>
        <fieldset aria-describedby="share-kinds-hint">
          <legend>{texts.kinds}</legend>
          {Object.entries(texts.names).map(([kind, name]) => (
            <label class="tick" key={kind}>
              <input type="checkbox" name="kind" value={kind} defaultChecked={texts.usual.includes(kind)} /> {name}
              {known.closed_kinds.includes(kind) && ` (${texts.closed})`}
            </label>
          ))}
          <p class="hint" id="share-kinds-hint">
            {texts.kindsHint}
          </p>
        </fieldset>
        <label for="share-days">{texts.days}</label>
        <input id="share-days" name="days" type="number" min={1} max={366} defaultValue="14" required aria-describedby="share-days-hint" />
        <p class="hint" id="share-days-hint">
          {texts.daysHint}
        </p>
        <label for="share-until">{texts.until}</label>
        <input id="share-until" name="until" type="date" defaultValue={known.usual_until} required />
        <p>
          <button type="submit" class="main" aria-disabled={busy}>
            {texts.go}
          </button>
        </p>
        <KeptLine told={told} wrong={nothing ? texts.none : wrong} />
      </form>
    </section>
  );
}

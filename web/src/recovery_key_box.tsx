import { useState } from "preact/hooks";
import { Problem, send } from "./ask_server";
import { KeptLine } from "./kept_line";
import { Loading } from "./loading";
import type { RecoveryKeyTold } from "./practice_book_replies";
import { practiceBookWords } from "./practice_book_words";
import { useReading } from "./reading";
import { session } from "./session";
import { words } from "./words";

const path = "/api/recovery-key";
const texts = practiceBookWords.key;

function sentenceFor(failure: unknown): string {
  if (!(failure instanceof Problem)) return words.problem.unknown;
  return failure.status === 429 ? texts.tooOften : failure.message;
}

/** What the recovery key is, when it was last tried, and for an owner a try of the paper in the drawer. */
export function RecoveryKeyBox() {
  const { value, problem, again } = useReading<RecoveryKeyTold>(path, null);
  const [told, setTold] = useState("");
  const [wrong, setWrong] = useState("");
  const [busy, setBusy] = useState(false);

  const tryIt = async (event: Event) => {
    event.preventDefault();
    if (busy) return;
    const field = (event.currentTarget as HTMLFormElement).elements.namedItem("key") as HTMLTextAreaElement;
    setBusy(true);
    setTold("");
    setWrong("");
    try {
      const { opens } = await send<{ opens: boolean }>(`${path}/try`, { key: field.value });
      field.value = "";
      opens ? setTold(texts.yes) : setWrong(texts.no);
      again();
    } catch (failure) {
      // What could not be read was not tried: one group is to be looked at, not all typed anew.
      if (!(failure instanceof Problem && failure.code === "unfit_key")) field.value = "";
      setWrong(sentenceFor(failure));
    } finally {
      setBusy(false);
    }
  };

  return (
    <section>
      <h2>{texts.title}</h2>
      <p>
        {texts.lead} {texts.careful}
      </p>
      {problem && <p class="wrong">{problem.message}</p>}
      {!value && !problem && <Loading text={texts.loading} />}
      {value && <p>{value.last ? texts.last(value.last.label, value.last.coach, value.last.opens) : texts.none}</p>}
      {session.value?.role !== "owner" && <p class="quiet">{texts.ownerOnly}</p>}
      {session.value?.role === "owner" && (
        <details>
          <summary>{texts.try}</summary>
          <form autocomplete="off" onSubmit={(event) => void tryIt(event)}>
            <label for="recovery-key">{texts.label}</label>
            <textarea
              id="recovery-key"
              name="key"
              rows={3}
              maxLength={200}
              required
              autocomplete="off"
              autocapitalize="characters"
              spellcheck={false}
              aria-describedby="recovery-key-hint"
            />
            <p class="hint" id="recovery-key-hint">
              {texts.hint}
            </p>
            <button type="submit" aria-disabled={busy}>
              {texts.go}
            </button>
          </form>
        </details>
      )}
      <KeptLine told={busy ? texts.trying : told} wrong={wrong} />
    </section>
  );
}

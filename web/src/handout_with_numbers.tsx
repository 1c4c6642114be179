import { useEffect, useState } from "preact/hooks";
import { ofClient, Problem, sendForFile } from "./ask_server";
import { planWords } from "./plan_words";
import { words } from "./words";

const say = planWords.papers;

/** Numbers in spite of the eating screen need a reason, which is kept before the paper is made (docs/safety.md, 12). */
export function HandoutWithNumbers({ client }: { client: string }) {
  const [made, setMade] = useState<string | null>(null);
  const [wrong, setWrong] = useState("");
  const [busy, setBusy] = useState(false);
  useEffect(() => () => void (made && URL.revokeObjectURL(made)), [made]);

  const submit = async (event: Event) => {
    event.preventDefault();
    const because = String(new FormData(event.currentTarget as HTMLFormElement).get("because") ?? "").trim();
    if (!because || busy) return;
    setBusy(true);
    setWrong("");
    try {
      const file = await sendForFile(ofClient(client, "/handout-with-numbers"), { numbers_because: because });
      setMade(URL.createObjectURL(file));
    } catch (failure) {
      setWrong(failure instanceof Problem ? failure.message : words.problem.unknown);
    } finally {
      setBusy(false);
    }
  };

  return (
    <details>
      <summary>{say.withNumbers}</summary>
      <form onSubmit={(event) => void submit(event)}>
        <label for="numbers-because">{say.because}</label>
        <input id="numbers-because" name="because" required maxLength={500} aria-describedby="numbers-because-hint" />
        <p class="hint" id="numbers-because-hint">
          {say.becauseHint}
        </p>
        <button type="submit" class="main" aria-disabled={busy}>
          {say.makeWithNumbers}
        </button>
      </form>
      <p role="status">
        {made && (
          <>
            {say.withNumbersMade}{" "}
            <a href={made} target="_blank" rel="noopener" download="handout.pdf">
              {say.open}
            </a>
          </>
        )}
      </p>
      {wrong && (
        <p class="wrong" role="alert">
          {wrong}
        </p>
      )}
    </details>
  );
}

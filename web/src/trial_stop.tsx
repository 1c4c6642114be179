import { useState } from "preact/hooks";
import { causesWords } from "./causes_words";
import { useGivenBack, useTaken } from "./given_back";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { words } from "./words";

const say = causesWords.trials;

/** Stopping asks for a reason first: it can't be taken back. */
export function TrialStop({ path, again }: { path: string; again: () => void }) {
  const [asks, setAsks] = useState(false);
  const opener = useGivenBack(asks);
  const field = useTaken<HTMLInputElement>(asks);
  const { busy, told, wrong, keep } = useKeeping();
  const submit = async (event: Event) => {
    event.preventDefault();
    const because = String(new FormData(event.currentTarget as HTMLFormElement).get("because") ?? "").trim();
    if (because && (await keep(`${path}/stop`, { because }, say.stoppedTold))) again();
  };
  if (!asks) {
    return (
      <button ref={opener} type="button" onClick={() => setAsks(true)}>
        {say.stop}
      </button>
    );
  }
  return (
    <form class="agree" onSubmit={(event) => void submit(event)}>
      <label for="stop-because">{say.stopWhy}</label>
      <input ref={field} id="stop-because" name="because" required maxLength={500} aria-describedby="stop-note" />
      <p class="hint" id="stop-note">
        {say.stopNote}
      </p>
      <button type="submit" class="main" aria-disabled={busy}>
        {say.stopSure}
      </button>{" "}
      <button type="button" class="plain" onClick={() => setAsks(false)}>
        {words.cancel}
      </button>
      <KeptLine told={told} wrong={wrong} />
    </form>
  );
}

import { useState } from "preact/hooks";
import { Problem } from "./ask_server";
import { PlaceTitle } from "./place_title";
import { endedFor, signIn } from "./session";
import { words } from "./words";

function sentenceFor(failure: unknown): string {
  if (!(failure instanceof Problem)) return words.problem.unknown;
  if (failure.status === 401) return words.signIn.wrong;
  if (failure.status === 429) return words.signIn.tooOften;
  return failure.message;
}

export function SignIn() {
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState("");

  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    setBusy(true);
    setWrong("");
    try {
      await signIn(String(form.get("coach") ?? "").trim(), String(form.get("passphrase") ?? ""));
    } catch (failure) {
      setWrong(sentenceFor(failure));
      setBusy(false);
    }
  };

  return (
    <main class="sign-in">
      <p class="product">{words.product}</p>
      <PlaceTitle text={words.signIn.title} focus={false} />
      {endedFor.value && <p role="status">{words.signIn.ended}</p>}
      <form onSubmit={(event) => void submit(event as unknown as SubmitEvent)}>
        <label for="coach">{words.signIn.coach}</label>
        <input id="coach" name="coach" autocomplete="username" required autocapitalize="none" spellcheck={false} aria-describedby="coach-hint" />
        <p class="hint" id="coach-hint">
          {words.signIn.coachHint}
        </p>
        <label for="passphrase">{words.signIn.passphrase}</label>
        <input id="passphrase" name="passphrase" type="password" autocomplete="current-password" required />
        {wrong && (
          <p class="wrong" role="alert">
            {wrong}
          </p>
        )}
        <button type="submit" class="main" disabled={busy}>
          {busy ? words.signIn.busy : words.signIn.go}
        </button>
      </form>
      <p class="quiet">{words.notAnAlarm}</p>
      <p class="quiet">{words.supportsCoaching}</p>
    </main>
  );
}

import { ofClient } from "./ask_server";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { useReading } from "./reading";
import type { ClientPromise } from "./replies";
import { words } from "./words";

export function Promises({ client }: { client: string }) {
  const path = ofClient(client, "/promises");
  const { value, problem, again } = useReading<{ promises: ClientPromise[] }>(path, client);
  const { busy, told, wrong, keep } = useKeeping();

  const submit = async (event: Event) => {
    event.preventDefault();
    const element = event.currentTarget as HTMLFormElement;
    const form = new FormData(element);
    const text = String(form.get("text") ?? "").trim();
    const due = String(form.get("due") ?? "");
    if (text && due && (await keep(path, { text, due }, words.promises.kept))) {
      element.reset();
      again();
    }
  };
  const markKept = async (id: number) => {
    if (await keep(`${path}/${id}/keep`, {}, words.promises.isKept)) again();
  };

  return (
    <>
      <h2 id="words-title">{words.promises.title}</h2>
      <form onSubmit={(event) => void submit(event)}>
        <label for="promise-text">{words.promises.label}</label>
        <input id="promise-text" name="text" required maxLength={500} />
        <label for="promise-due">{words.promises.due}</label>
        <input id="promise-due" name="due" type="date" required />
        <button type="submit" class="main" aria-disabled={busy}>
          {words.promises.keep}
        </button>
        <KeptLine told={told} wrong={wrong} />
      </form>
      {problem && <p class="wrong">{problem.message}</p>}
      {value && value.promises.length === 0 && <p class="quiet">{words.promises.none}</p>}
      <ul class="written-words">
        {value?.promises.map((promise) => (
          <li key={promise.id}>
            {promise.text}{" "}
            <span class="quiet">
              {promise.kept_at === null ? words.promises.by(promise.due) : words.promises.wasKept(promise.kept_at.slice(0, 10))}
            </span>{" "}
            {promise.kept_at === null && (
              <button type="button" aria-disabled={busy} aria-label={`${words.promises.markKept}: ${promise.text}`} onClick={() => void markKept(promise.id)}>
                {words.promises.markKept}
              </button>
            )}
          </li>
        ))}
      </ul>
    </>
  );
}

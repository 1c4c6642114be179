import { ofClient } from "./ask_server";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { useReading } from "./reading";
import type { ClientPromise } from "./replies";
import { words } from "./words";

/** What was promised, by which day, and that it was kept. */
export function PromiseList({ client }: { client: string }) {
  const path = ofClient(client, "/promises");
  const { value, problem, again } = useReading<{ promises: ClientPromise[] }>(path, client);
  const { busy, told, wrong, keep } = useKeeping();
  const markKept = async (id: number) => {
    if (await keep(`${path}/${id}/keep`, {}, words.promises.isKept)) again();
  };
  return (
    <>
      {problem && <p class="wrong">{problem.message}</p>}
      {value && value.promises.length === 0 && <p class="quiet">{words.promises.none}</p>}
      <ul class="written-words">
        {value?.promises.map((promise) => (
          <li key={promise.id}>
            {promise.text}{" "}
            <span class="quiet">
              {promise.kept_at === null ? words.promises.by(promise.due_words) : words.promises.wasKept(promise.kept_words ?? "")}
            </span>{" "}
            {promise.kept_at === null && (
              <button type="button" aria-disabled={busy} aria-label={`${words.promises.markKept}: ${promise.text}`} onClick={() => void markKept(promise.id)}>
                {words.promises.markKept}
              </button>
            )}
          </li>
        ))}
      </ul>
      <KeptLine told={told} wrong={wrong} />
    </>
  );
}

import { ofClient } from "./ask_server";
import type { MealPhotos } from "./diary_replies";
import { factsWords } from "./facts_words";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { goTo } from "./place";
import { useReading } from "./reading";
import { session } from "./session";

const texts = factsWords.leave;

/** Copies for the client, and erasing: the owner's, after a copy, with the handle written out. */
export function LeaveBox({ client }: { client: string }) {
  const { busy, told, wrong, keep } = useKeeping();
  const photos = useReading<MealPhotos>(ofClient(client, "/photos"), client);
  const erase = async (event: Event) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const body = { confirm: String(form.get("confirm") ?? "").trim(), without_export: form.get("none") ? "yes" : "no" };
    if (await keep(ofClient(client, "/erase"), body, "")) goTo({ at: "caseload" });
  };
  return (
    <section class="facts">
      <h2>{texts.title}</h2>
      <p>{texts.lead}</p>
      <ul>
        {Object.entries(texts.files).map(([file, what]) => (
          <li key={file}>
            <a href={ofClient(client, `/export/${file}`)} download>
              {what} ({file})
            </a>
          </li>
        ))}
        {photos.value?.photos.map(({ id, meal_at }) => (
          <li key={id}>
            <a href={ofClient(client, `/export/photo-${id}.jpg`)} download>
              {texts.photo(meal_at)} (photo-{id}.jpg)
            </a>
          </li>
        ))}
      </ul>
      {session.value?.role !== "owner" && <p class="quiet">{texts.ownerOnly}</p>}
      {session.value?.role === "owner" && (
        <details>
          <summary>{texts.erase}</summary>
          <form onSubmit={(event) => void erase(event)}>
            <p>{texts.warn}</p>
            <label class="tick">
              <input type="checkbox" name="none" /> {texts.noExport}
            </label>
            <label for="erase-confirm">{texts.confirm(client)}</label>
            <input id="erase-confirm" name="confirm" autocomplete="off" required />
            <p>
              <button type="submit" aria-disabled={busy}>
                {texts.yes}
              </button>
            </p>
            <KeptLine told={told} wrong={wrong} />
          </form>
        </details>
      )}
    </section>
  );
}

import { useState } from "preact/hooks";
import { Problem, send } from "./ask_server";
import { factsWords } from "./facts_words";
import { goTo } from "./place";
import { PlaceTitle } from "./place_title";
import { words } from "./words";

const texts = factsWords.newClient;

/** The zones the browser knows by name, to choose from; the server reads them. */
const zones = (): string[] => Intl.supportedValuesOf?.("timeZone") ?? [];

/** A client is taken on with a name and a clock. */
export function NewClientPlace() {
  const [wrong, setWrong] = useState("");
  const submit = async (event: Event) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const zone = String(form.get("zone") ?? "").trim();
    try {
      const name = String(form.get("name") ?? "").trim();
      const body = { name, changes: zone ? { zones: [{ zone, from: null }] } : {} };
      const { handle } = await send<{ handle: string }>("/api/clients", body);
      goTo({ at: "facts", client: handle });
    } catch (failure) {
      setWrong(`${words.problem.notKept} ${failure instanceof Problem ? failure.message : words.problem.unknown}`);
    }
  };
  return (
    <>
      <PlaceTitle text={texts.title} />
      <p>{texts.lead}</p>
      <form onSubmit={(event) => void submit(event)}>
        <label for="new-name">{texts.name}</label>
        <input id="new-name" name="name" required maxLength={200} autocomplete="off" />
        <label for="new-zone">{texts.zone}</label>
        <input
          id="new-zone"
          name="zone"
          list="zones"
          aria-describedby="new-zone-hint"
          defaultValue={Intl.DateTimeFormat().resolvedOptions().timeZone}
        />
        <datalist id="zones">
          {zones().map((zone) => (
            <option key={zone} value={zone} />
          ))}
        </datalist>
        <p class="hint" id="new-zone-hint">
          {texts.zoneHint}
        </p>
        <button type="submit" class="main">
          {texts.go}
        </button>
        {wrong && (
          <p class="wrong" role="alert">
            {wrong}
          </p>
        )}
      </form>
    </>
  );
}

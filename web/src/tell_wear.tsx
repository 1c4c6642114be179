import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import type { WearGone } from "./sensor_replies";
import { sensorWords } from "./sensor_words";

const say = sensorWords.tell;

function Choice({ id, label, texts, chosen }: { id: string; label: string; texts: Record<string, string>; chosen: string }) {
  return (
    <>
      <label for={id}>{label}</label>
      <select id={id} name={id}>
        {Object.entries(texts).map(([code, text]) => (
          <option key={code} value={code} selected={code === chosen}>
            {text}
          </option>
        ))}
      </select>
    </>
  );
}

/** How a sensor sat and why it ended, of any wear; the last one to begin with. */
export function TellWear({ client, wears, again }: { client: string; wears: WearGone[]; again: () => void }) {
  const [number, setNumber] = useState(wears.at(-1)?.number ?? 0);
  const { busy, told, wrong, keep } = useKeeping();
  const wear = wears.find((one) => one.number === number);
  if (!wear) return null;
  const submit = async (event: Event) => {
    event.preventDefault();
    const typed = new FormData(event.currentTarget as HTMLFormElement);
    const part = (name: string) => String(typed.get(name) ?? "").trim();
    const body = { end: part("wear-end"), overpatch: part("wear-overpatch"), site: part("wear-site") };
    if (await keep(ofClient(client, `/wears/${number}`), body, say.told(wear.label))) again();
  };
  return (
    <section>
      <h2>{say.title}</h2>
      <form onSubmit={(event) => void submit(event)}>
        <label for="wear-number">{say.wear}</label>
        <select id="wear-number" value={String(number)} onChange={(event) => setNumber(Number(event.currentTarget.value))}>
          {wears.map((one) => (
            <option key={one.number} value={String(one.number)}>
              {say.named(one.label, one.from_words)}
            </option>
          ))}
        </select>
        {/* Made anew for another wear, so that what is known of it stands in the fields. */}
        <div key={number}>
          <Choice id="wear-end" label={say.end} texts={say.ends} chosen={wear.end_called} />
          <Choice id="wear-overpatch" label={say.overpatch} texts={say.overpatches} chosen={wear.overpatch === null ? "unknown" : wear.overpatch ? "yes" : "no"} />
          <label for="wear-site">{say.site}</label>
          <input id="wear-site" name="wear-site" maxLength={200} defaultValue={wear.site} aria-describedby="wear-site-hint" />
          <p class="hint" id="wear-site-hint">
            {say.siteHint}
          </p>
        </div>
        <button type="submit" class="main" aria-disabled={busy}>
          {say.keep}
        </button>
        <KeptLine told={told} wrong={wrong} />
      </form>
    </section>
  );
}

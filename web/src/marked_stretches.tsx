import { useId } from "preact/hooks";
import { ofClient } from "./ask_server";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import type { Stretch } from "./trust_replies";
import { trustWords } from "./trust_words";

const texts = trustWords.stretches;

interface Props {
  client: string;
  stretches: Stretch[];
  again: () => void;
}

/** Every suspect stretch with what was seen there; each is unmarked with a reason, and marked again. */
export function MarkedStretches({ client, stretches, again }: Props) {
  const { told, wrong, keep } = useKeeping();
  const id = useId();
  const send = async (path: string, body: unknown, done: string) => {
    if (await keep(ofClient(client, path), body, done)) again();
  };
  const count = (one: Stretch, event: Event) => {
    event.preventDefault();
    const why = String(new FormData(event.currentTarget as HTMLFormElement).get("why") ?? "").trim();
    void send("/stretches/count", { begins: one.begins, ends: one.ends, why }, texts.isCounted);
  };
  return (
    <section>
      <h2>{texts.title}</h2>
      <p class="quiet">{texts.lead}</p>
      <KeptLine told={told} wrong={wrong} />
      {stretches.length === 0 && <p>{texts.none}</p>}
      <ol class="plain-list">
        {stretches.map((one, at) => (
          <li key={`${one.begins} ${one.name} ${one.wear}`}>
            <b>{texts.span(one.from, one.to)}</b> {one.name}
            {one.wear && ` ${texts.wear(one.wear)}`}
            {!one.marked && <b> ({texts.counted})</b>}
            <br />
            <span class="quiet">{one.telling !== null && one.why ? texts.told(one.why) : one.seen}</span>
            {one.telling !== null ? (
              <p>
                <button type="button" onClick={() => void send(`/stretches/${one.telling}/take-back`, {}, one.marked ? texts.isTakenBack : texts.isMarked)}>
                  {one.marked ? texts.takeBack : texts.again}
                </button>
              </p>
            ) : (
              one.countable && (
                <form class="actions" onSubmit={(event) => count(one, event)}>
                  <label class="beside" for={`${id}${at}`}>
                    {texts.why}
                  </label>
                  <input id={`${id}${at}`} name="why" required maxLength={500} />
                  <button type="submit" aria-label={texts.countOf(one.name, one.from)}>
                    {texts.count}
                  </button>
                </form>
              )
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}

import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { useGivenBack } from "./given_back";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import type { AgreedChange } from "./plan_replies";
import { planWords } from "./plan_words";
import { words } from "./words";

type Part = keyof typeof planWords.parts;

/** What was told of a change, each part under its name. */
export function ChangeParts({ change }: { change: AgreedChange }) {
  const parts = (Object.keys(planWords.parts) as Part[]).filter((part) => change[part]);
  if (parts.length === 0) return null;
  return (
    <dl class="parts">
      {parts.map((part) => (
        <div key={part}>
          <dt>{planWords.parts[part]}</dt>
          <dd>{change[part]}</dd>
        </div>
      ))}
    </dl>
  );
}

/** The one change that goes on, in the client's words, and how it is ended. */
export function AgreedNow({ client, agreed, closed }: { client: string; agreed: AgreedChange | null; closed: string[] }) {
  const [asks, setAsks] = useState(false);
  const opener = useGivenBack(asks);
  const section = useRef<HTMLElement>(null);
  const before = useRef(agreed);
  // What was agreed or ended just now stands here: the form that did it is gone.
  useLayoutEffect(() => {
    if ((before.current === null) !== (agreed === null) && document.activeElement === document.body) section.current?.focus();
    before.current = agreed;
  }, [agreed]);
  const { busy, told, wrong, keep } = useKeeping();
  const submit = async (event: Event) => {
    event.preventDefault();
    const outcome = String(new FormData(event.currentTarget as HTMLFormElement).get("outcome") ?? "");
    if (outcome && (await keep(ofClient(client, "/plan/end"), { outcome }, planWords.ended.told))) setAsks(false);
  };
  return (
    <section class="agreed" ref={section} tabIndex={-1}>
      {agreed ? (
        <>
          {closed.length > 0 && (
            <p class="wrong">
              {planWords.notGoneOn} {closed.join(" ")}
            </p>
          )}
          <p class="clients-words">“{agreed.words}”</p>
          {agreed.agreed_on && <p class="quiet">{planWords.agreedOn(agreed.agreed_on)}</p>}
          <ChangeParts change={agreed} />
          {!asks && (
            <button ref={opener} type="button" onClick={() => setAsks(true)}>
              {planWords.ended.open}
            </button>
          )}
        </>
      ) : (
        <p>{planWords.none}</p>
      )}
      {agreed && asks && (
        <form onSubmit={(event) => void submit(event)}>
          <fieldset>
            <legend>{planWords.ended.question(agreed.words)}</legend>
            {(["kept", "dropped", "changed"] as const).map((outcome) => (
              <label class="choice" key={outcome}>
                <input type="radio" name="outcome" value={outcome} required /> {planWords.ended[outcome]}
              </label>
            ))}
          </fieldset>
          <p class="hint">{planWords.ended.note}</p>
          <button type="submit" class="main" aria-disabled={busy}>
            {planWords.ended.keep}
          </button>{" "}
          <button type="button" class="plain" onClick={() => setAsks(false)}>
            {words.cancel}
          </button>
        </form>
      )}
      <KeptLine told={told} wrong={wrong} />
    </section>
  );
}

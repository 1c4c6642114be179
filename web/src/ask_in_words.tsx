import { useState } from "preact/hooks";
import { AskedAnswers } from "./asked_answers";
import { ofClient } from "./ask_server";
import type { OutcomeToAsk } from "./causes_replies";
import { causesWords } from "./causes_words";
import { useReading } from "./reading";

const say = causesWords.ask;

/** 'Is fasting glucose different with two hours less sleep?': an outcome, and what it may go with. */
export function AskInWords({ client }: { client: string }) {
  const { value } = useReading<{ outcomes: OutcomeToAsk[] }>(ofClient(client, "/questions"), client);
  const [about, setAbout] = useState("fasting");
  const [because, setBecause] = useState<string[]>([]);
  const [asked, setAsked] = useState<string | null>(null);
  const [wrong, setWrong] = useState("");
  const outcome = value?.outcomes.find((one) => one.code === about);

  const ask = (scan: boolean) => {
    const chosen = because.filter((code) => outcome?.causes.some((cause) => cause.code === code));
    setWrong(!scan && chosen.length === 0 ? say.choose : "");
    if (!scan && chosen.length === 0) return;
    setAsked(`?${new URLSearchParams(scan ? { about, scan: "yes" } : { about, because: chosen.join(",") }).toString()}`);
  };
  const tick = (code: string, on: boolean) => setBecause(on ? [...because, code] : because.filter((one) => one !== code));

  return (
    <section>
      <h2>{say.title}</h2>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          ask(false);
        }}
      >
        <label for="ask-about">{say.about}</label>
        <select id="ask-about" value={about} aria-describedby="ask-means" onChange={(event) => setAbout(event.currentTarget.value)}>
          {value?.outcomes.map((one) => (
            <option key={one.code} value={one.code}>
              {one.words}
            </option>
          ))}
        </select>
        <p class="hint" id="ask-means">
          {outcome?.means}
        </p>
        <fieldset>
          <legend>{say.because}</legend>
          <div class="causes">
            {outcome?.causes.map((cause) => (
              <label class="choice" key={cause.code}>
                <input type="checkbox" checked={because.includes(cause.code)} onChange={(event) => tick(cause.code, event.currentTarget.checked)} /> {cause.change}{" "}
                {cause.to_note && <span class="hint">({say.needs(cause.to_note)})</span>}
              </label>
            ))}
          </div>
        </fieldset>
        <p class="hint">{say.noCauses}</p>
        <button type="submit" class="main">
          {say.go}
        </button>{" "}
        <button type="button" aria-describedby="scan-note" onClick={() => ask(true)}>
          {say.scan}
        </button>
        <p class="hint" id="scan-note">
          {say.scanNote}
        </p>
        {wrong && (
          <p class="wrong" role="alert">
            {wrong}
          </p>
        )}
      </form>
      <div aria-live="polite">{asked && <AskedAnswers client={client} query={asked} />}</div>
    </section>
  );
}

import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import type { ImportLine } from "./bring_in_replies";
import { bringInWords } from "./bring_in_words";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { useReading } from "./reading";

const texts = bringInWords.earlier;

/** What was brought in, newest first; the newest can be taken back, after a question. */
export function ImportsList({ client }: { client: string }) {
  const { value, problem, again } = useReading<{ imports: ImportLine[] }>(ofClient(client, "/imports"), client);
  const { told, wrong, keep } = useKeeping();
  const [asked, setAsked] = useState(false);

  const undo = async (one: ImportLine) => {
    setAsked(false);
    if (await keep(ofClient(client, `/imports/${one.id}/undo`), {}, texts.undone)) again();
  };

  return (
    <section class="imports">
      <h2>{texts.title}</h2>
      <KeptLine told={told} wrong={wrong} />
      {problem && <p class="wrong">{problem.message}</p>}
      {value?.imports.length === 0 && <p class="quiet">{texts.none}</p>}
      <ol class="plain-list">
        {value?.imports.map((one) => (
          <li key={one.id}>
            <b>{one.file}</b> <span>{texts.line(one.at, one.rows.stored, one.rows.read)}</span>{" "}
            {one.newest && !asked && (
              <button type="button" onClick={() => setAsked(true)}>
                {texts.undo}
              </button>
            )}
            {one.newest && asked && (
              <div role="alert">
                <p>{texts.ask(one.rows.stored, one.file)}</p>
                <p class="actions">
                  <button type="button" onClick={() => void undo(one)}>
                    {texts.yes}
                  </button>
                  <button type="button" onClick={() => setAsked(false)}>
                    {texts.no}
                  </button>
                </p>
              </div>
            )}
          </li>
        ))}
      </ol>
      {value && value.imports.length > 1 && <p class="quiet">{texts.later}</p>}
    </section>
  );
}

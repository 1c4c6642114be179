import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { DataTableBox } from "./data_table_box";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import type { Share } from "./shares_replies";
import { sharesWords } from "./shares_words";

const texts = sharesWords.list;
const mostLooks = 50;

/** Who looked through a share, the newest look first. */
function Looks({ share }: { share: Share }) {
  if (share.looks.length === 0) return <p class="quiet">{texts.looks(0)}</p>;
  const newest = [...share.looks].reverse().slice(0, mostLooks);
  return (
    <details>
      <summary>{texts.looks(share.looks.length)}</summary>
      <DataTableBox
        name={texts.looksOf(share.recipient)}
        table={{
          columns: [texts.when, texts.asked, texts.answer],
          rows: newest.map(({ label, asked, answer }) => [label, asked, answer]),
        }}
      />
      {share.looks.length > mostLooks && <p class="quiet">{texts.earlier(share.looks.length - mostLooks)}</p>}
    </details>
  );
}

/** Every share, the newest first; an open one is revoked after a question. */
export function ShareList({ client, shares, again }: { client: string; shares: Share[]; again: () => void }) {
  const { told, wrong, keep } = useKeeping();
  const [asked, setAsked] = useState<number | null>(null);
  const revoke = async (share: Share) => {
    setAsked(null);
    if (await keep(ofClient(client, `/shares/${share.id}/revoke`), {}, texts.revoked)) again();
  };
  return (
    <section>
      <h2>{texts.title}</h2>
      <KeptLine told={told} wrong={wrong} />
      {shares.length === 0 && <p class="quiet">{texts.none}</p>}
      <ol class="plain-list">
        {[...shares].reverse().map((share) => (
          <li key={share.id}>
            <b>{share.recipient}</b>, {share.purpose} (<b>{texts.states[share.state]}</b>)
            <p>{share.kinds.join(", ")}</p>
            <p class="quiet">
              {texts.line(share.days, share.given, share.last_day)} {share.revoked && texts.revokedAt(share.revoked)}
            </p>
            <Looks share={share} />
            {share.state === "open" && asked !== share.id && (
              <p class="actions">
                <button type="button" aria-label={texts.revokeOf(share.recipient)} onClick={() => setAsked(share.id)}>
                  {texts.revoke}
                </button>
              </p>
            )}
            {share.state === "open" && asked === share.id && (
              <div role="alert">
                <p>{texts.ask(share.recipient)}</p>
                <p class="actions">
                  <button type="button" onClick={() => void revoke(share)}>
                    {texts.yes}
                  </button>
                  <button type="button" onClick={() => setAsked(null)}>
                    {texts.no}
                  </button>
                </p>
              </div>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}

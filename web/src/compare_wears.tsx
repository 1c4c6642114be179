import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { DataTableBox } from "./data_table_box";
import { FindingBox } from "./finding_box";
import type { BeforeAfter, WearNamed } from "./helped_replies";
import { helpedWords } from "./helped_words";
import { Loading } from "./loading";
import { useReading } from "./reading";

const say = helpedWords.compare;

function Compared({ client, query }: { client: string; query: string }) {
  const { value, problem } = useReading<BeforeAfter>(ofClient(client, `/before-after${query}`), client);
  if (!value && problem) return <p class="wrong">{problem.message}</p>;
  if (!value) return <Loading text={say.loading} />;
  const rows = [
    [say.earlier, String(value.days_before), value.words.before, value.words.before_of_all],
    [say.later, String(value.days_after), value.words.after, value.words.after_of_all],
  ];
  return (
    <>
      <FindingBox finding={value.finding} />
      <DataTableBox name={say.table} table={{ columns: say.columns, rows }} />
    </>
  );
}

function Chosen({ id, label, wears, value, choose }: { id: string; label: string; wears: WearNamed[]; value: number; choose: (at: number) => void }) {
  return (
    <p>
      <label for={id}>{label}</label>
      <select id={id} value={String(value)} onChange={(event) => choose(Number(event.currentTarget.value))}>
        {wears.map((wear, at) => (
          <option key={at} value={String(at + 1)}>
            {wear.label}: {wear.days}
          </option>
        ))}
      </select>
    </p>
  );
}

/** Any two wears against each other; to begin with the last two of which one ended before the other began. */
export function CompareWears({ client, wears, lastTwo }: { client: string; wears: WearNamed[]; lastTwo: [number, number] | null }) {
  const [before, setBefore] = useState(lastTwo?.[0] ?? wears.length - 1);
  const [after, setAfter] = useState(lastTwo?.[1] ?? wears.length);
  const [otherKind, setOtherKind] = useState(false);
  return (
    <section>
      <h2>{say.title}</h2>
      {wears.length < 2 ? (
        <p class="empty">{say.one}</p>
      ) : (
        <>
          <p class="quiet">{say.note}</p>
          <div class="two-fields">
            <Chosen id="wear-before" label={say.before} wears={wears} value={before} choose={setBefore} />
            <Chosen id="wear-after" label={say.after} wears={wears} value={after} choose={setAfter} />
          </div>
          <label class="choice">
            <input type="checkbox" checked={otherKind} onChange={(event) => setOtherKind(event.currentTarget.checked)} /> {say.otherKind}
          </label>
          {before === after ? (
            <p role="status">{say.same}</p>
          ) : (
            <Compared client={client} query={`?before=${before}&after=${after}${otherKind ? "&other_kind=yes" : ""}`} />
          )}
        </>
      )}
    </section>
  );
}

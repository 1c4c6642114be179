import { ofClient } from "./ask_server";
import { causesWords } from "./causes_words";
import { DataTableBox } from "./data_table_box";
import { FigureBox } from "./figure_box";
import { FindingBox } from "./finding_box";
import { Loading } from "./loading";
import { useReading } from "./reading";
import type { PairsRead, TrialRead } from "./trial_replies";

const say = causesWords.trials;

const rowOf = (name: string, read: PairsRead): string[] => [name, String(read.pairs), read.estimate, read.interval ?? "", read.p ?? ""];

/** What a trial shows once it has ended: as allotted first, as done second. */
export function TrialReading({ client, number }: { client: string; number: number }) {
  const { value, problem } = useReading<TrialRead>(ofClient(client, `/trials/${number}`), client);
  if (!value && problem) return <p class="wrong">{problem.message}</p>;
  if (!value) return <Loading text={causesWords.ask.loading} />;
  const { reading } = value;
  const rows = [
    ...(reading.as_allotted ? [rowOf(say.asAllotted, reading.as_allotted)] : []),
    ...(reading.as_done ? [rowOf(say.asDone, reading.as_done)] : []),
  ];
  return (
    <>
      <FindingBox finding={{ ...reading.finding, question: say.answer }} under />
      {value.gates.length > 0 && (
        <ul>
          {value.gates.map((gate) => (
            <li key={gate}>{gate}</li>
          ))}
        </ul>
      )}
      <FigureBox figure={value.figure ?? undefined} said />
      {rows.length > 0 && <DataTableBox name={say.reading} table={{ columns: say.readColumns, rows }} />}
      {reading.as_allotted?.orders && <p class="hint">{say.exact(reading.as_allotted.orders)}</p>}
      {reading.ended && (
        <details>
          <summary>{say.readDays}</summary>
          <DataTableBox
            name={say.readDays}
            table={{
              columns: say.dayColumns,
              rows: reading.days.map((day) => [day.label, value[day.allotted], say.done[day.done], day.value ?? day.none_because ?? ""]),
            }}
          />
        </details>
      )}
      {reading.ended && (
        <details>
          <summary>{say.items}</summary>
          <DataTableBox name={say.items} table={{ columns: say.itemColumns, rows: reading.report.map(({ item, text }) => [item, text]) }} />
        </details>
      )}
    </>
  );
}

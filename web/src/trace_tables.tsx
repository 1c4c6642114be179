import { DataTableBox } from "./data_table_box";
import type { DataTable, Stretched } from "./replies";
import type { Stretch } from "./stretch";
import { civilTime } from "./tick_choice";
import { mergedWears } from "./trace_rows";
import { words } from "./words";

/** Longer tables than this no one reads; looking closer brings the others. */
const most = 400;

function readingsTable(trace: Stretched, shown: Stretch): { table: DataTable; cut: boolean } {
  const rows = mergedWears(trace)
    .filter((row) => row.at >= shown.from && row.at <= shown.to)
    .map((row) => [row.label, ...row.told]);
  return {
    table: { columns: [words.day.time, ...trace.wears.map((wear) => wear.label)], rows: rows.slice(0, most) },
    cut: rows.length > most,
  };
}

function entriesTable(trace: Stretched): DataTable {
  const rows = [
    ...trace.finger_pricks.map((prick) => [civilTime(trace, prick.at), words.day.fingerPrick, prick.label]),
    ...trace.lanes.flatMap((lane) => lane.items.map((item) => [item.label, lane.name, item.text])),
  ];
  return { columns: [words.day.time, words.day.lane, words.day.text], rows };
}

function marksTable(trace: Stretched): DataTable {
  return {
    columns: [words.day.marksFrom, words.day.marksTo, words.day.marksWhat],
    rows: trace.marks.map((mark) => [mark.from, mark.to, mark.label]),
  };
}

/** The sheet's data as tables, for those who don't see the canvas. */
export function TraceTables({ trace, shown }: { trace: Stretched; shown: Stretch }) {
  // Without civil times a row would say nothing: several days at once leave their readings to the day sheets.
  const readings = trace.wears.every((wear) => wear.labels) ? readingsTable(trace, shown) : null;
  const entries = entriesTable(trace);
  return (
    <>
      {readings && (
        <details>
          <summary>{words.day.readings}</summary>
          {readings.cut && <p class="quiet">{words.day.older(most)}</p>}
          <DataTableBox name={words.day.readings} table={readings.table} />
        </details>
      )}
      {trace.marks.length > 0 && (
        <details>
          <summary>{words.day.marksTable}</summary>
          <DataTableBox name={words.day.marksTable} table={marksTable(trace)} />
        </details>
      )}
      <details>
        <summary>{words.day.entries}</summary>
        <DataTableBox name={words.day.entries} table={entries} />
      </details>
    </>
  );
}

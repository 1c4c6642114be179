import type { Signal } from "@preact/signals";
import { useState } from "preact/hooks";
import { DataTableBox } from "./data_table_box";
import type { DataTable } from "./replies";
import { useSettled } from "./settled";
import type { Stretch } from "./stretch";
import { civilTime } from "./tick_choice";
import { firstFrom, instantsOf, type ReadTrace, rowAt } from "./trace_rows";
import { words } from "./words";

/** Longer tables than this no one reads; looking closer brings the others. */
const most = 400;

function readingsTable(trace: ReadTrace, shown: Stretch): { table: DataTable; cut: boolean } {
  const instants = instantsOf(trace);
  const from = firstFrom(instants, shown.from);
  const to = firstFrom(instants, shown.to + 1);
  const rows = instants.slice(from, Math.min(to, from + most)).map((at) => {
    const { label, told } = rowAt(trace, at);
    return [label, ...told];
  });
  return { table: { columns: [words.day.time, ...trace.wears.map((wear) => wear.label)], rows }, cut: to - from > most };
}

function entriesTable(trace: ReadTrace): DataTable {
  const rows = [
    ...trace.finger_pricks.map((prick) => [civilTime(trace, prick.at), words.day.fingerPrick, prick.label]),
    ...trace.lanes.flatMap((lane) => lane.items.map((item) => [item.label, lane.name, item.text])),
  ];
  return { columns: [words.day.time, words.day.lane, words.day.text], rows };
}

function marksTable(trace: ReadTrace): DataTable {
  return {
    columns: [words.day.marksFrom, words.day.marksTo, words.day.marksWhat],
    rows: trace.marks.map((mark) => [mark.from, mark.to, mark.label]),
  };
}

/** A table that is made once it is unfolded. */
function FoldedTable({ name, made }: { name: string; made: () => DataTable }) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{name}</summary>
      {open && <DataTableBox name={name} table={made()} />}
    </details>
  );
}

/** Of the stretch on the screen, once it is at rest; nothing is made of it while it is folded away. */
function ReadingsTable({ trace, shown }: { trace: ReadTrace; shown: Signal<Stretch> }) {
  const [open, setOpen] = useState(false);
  const settled = useSettled(shown);
  const readings = open ? readingsTable(trace, settled) : null;
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.day.readings}</summary>
      {readings?.cut && <p class="quiet">{words.day.older(most)}</p>}
      {readings && <DataTableBox name={words.day.readings} table={readings.table} />}
    </details>
  );
}

/** The sheet's data as tables, for those who don't see the canvas. */
export function TraceTables({ trace, shown }: { trace: ReadTrace; shown: Signal<Stretch> }) {
  // Without civil times a row would say nothing: several days at once leave their readings to the day sheets.
  const looksClosely = trace.wears.every((wear) => wear.labels);
  return (
    <>
      {looksClosely && <ReadingsTable trace={trace} shown={shown} />}
      {trace.marks.length > 0 && <FoldedTable name={words.day.marksTable} made={() => marksTable(trace)} />}
      <FoldedTable name={words.day.entries} made={() => entriesTable(trace)} />
    </>
  );
}

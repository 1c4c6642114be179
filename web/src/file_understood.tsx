import type { FileReply } from "./bring_in_replies";
import { bringInWords } from "./bring_in_words";
import { DataTableBox } from "./data_table_box";

const texts = bringInWords.understood;

/** Every guess with why, the first rows as they were understood, the columns. */
export function FileUnderstood({ reply }: { reply: FileReply }) {
  return (
    <>
      <h3>{texts.title}</h3>
      <DataTableBox
        name={texts.guesses}
        table={{
          columns: [texts.what, texts.found, texts.sure, texts.why],
          rows: reply.guesses.map(({ what, found, sure, why }) => [what, found, texts.sureOf[sure] ?? sure, why]),
        }}
      />
      {reply.sample.length > 0 && (
        <DataTableBox
          name={texts.sample}
          table={{ columns: texts.cells, rows: reply.sample.map(([line = "", at = "", ...read]) => [line, at, read.join("; ")]) }}
        />
      )}
      <details>
        <summary>{texts.columns}</summary>
        <DataTableBox
          name={texts.columns}
          table={{
            columns: [texts.column, texts.columnTitle, texts.role, texts.unit],
            rows: reply.columns.map(({ column, title, role, unit }) => [String(column), title || texts.noTitle, role, unit ?? ""]),
          }}
        />
      </details>
    </>
  );
}

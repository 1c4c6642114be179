import type { FileReply, RowNote } from "./bring_in_replies";
import { bringInWords } from "./bring_in_words";
import { DataTableBox } from "./data_table_box";

const texts = bringInWords.rows;
/** Of one kind; the others are counted. */
const mostOfAKind = 5;

/** The first notes of each kind, what could not be kept before what was. */
function firstNotes(reply: FileReply): { shown: RowNote[]; more: number } {
  const seen = new Map<string, number>();
  const shown = reply.notes.filter((note) => {
    const n = (seen.get(note.code) ?? 0) + 1;
    seen.set(note.code, n);
    return n <= mostOfAKind;
  });
  shown.sort((a, b) => Number(a.fate === "stored") - Number(b.fate === "stored"));
  const all = Object.values(reply.notes_by_code).reduce((sum, n) => sum + n, 0);
  return { shown, more: all - shown.length };
}

const told = (note: RowNote): string =>
  note.fate === "stored" ? texts.storedNote(note.found, note.expected) : texts.rejectedNote(note.found, note.expected);

/** The account of the rows, what the file adds, and each row that needs a word. */
export function FileRows({ reply, kept }: { reply: FileReply; kept: boolean }) {
  const { rows } = reply;
  const { shown, more } = firstNotes(reply);
  const parts = [
    texts.stored(rows.stored, kept),
    texts.duplicate(rows.duplicate),
    texts.conflict(rows.conflict),
    texts.rejected(rows.rejected),
  ];
  return (
    <>
      <h3>{texts.title}</h3>
      {rows.waiting_for_an_answer > 0 ? (
        <p>{texts.waiting(rows.waiting_for_an_answer)}</p>
      ) : (
        <p class="row-account">
          {texts.read(rows.read)} = {parts.join(" + ")}.
        </p>
      )}
      {rows.not_data > 0 && <p class="quiet">{texts.notData(rows.not_data)}</p>}
      {reply.nothing_new && <p>{rows.duplicate > 0 ? texts.nothingNew : texts.nothingUsable}</p>}
      {reply.held > 0 && <p>{texts.held(reply.held)}</p>}
      {reply.agreement && <p>{reply.agreement}</p>}
      {(reply.wears.length > 0 || reply.diary_entries > 0) && (
        <>
          <h3>{bringInWords.gives.title}</h3>
          <ul>
            {reply.wears.map((wear) => (
              <li key={wear.from}>{bringInWords.gives.wear(wear.joins, wear.readings, wear.from, wear.to, wear.every_minutes)}</li>
            ))}
            {reply.diary_entries > 0 && <li>{bringInWords.gives.entries(reply.diary_entries)}</li>}
          </ul>
        </>
      )}
      {shown.length > 0 && (
        <DataTableBox
          name={texts.table}
          table={{
            columns: [texts.where, texts.fate, texts.what],
            rows: shown.map((note) => [texts.note(note.line, note.column), texts.fates[note.fate] ?? note.fate, told(note)]),
          }}
        />
      )}
      {more > 0 && <p class="quiet">{texts.more(more)}</p>}
    </>
  );
}

// What the server says of a file (docs/api/openapi.json, Import and Imports).

export interface FileQuestion {
  code: string;
  question: string;
  guess: string | null;
  /** The part of the query that answers it; null: it can't be answered here. */
  answered_by: string | null;
  choices: string[];
}

export interface RowCounts {
  read: number;
  stored: number;
  duplicate: number;
  conflict: number;
  rejected: number;
}

export interface RowNote {
  line: number;
  column: number;
  fate: string;
  code: string;
  found: string;
  expected: string;
}

export interface PlannedWear {
  joins: boolean;
  from: string;
  to: string;
  every_minutes: number;
  readings: number;
}

export interface FileReply {
  file: string;
  rows: RowCounts & { waiting_for_an_answer: number; not_data: number };
  guesses: { what: string; found: string; sure: string; why: string }[];
  questions: FileQuestion[];
  columns: { column: number; title: string; role: string; unit: string | null }[];
  sample: string[][];
  notes: RowNote[];
  notes_by_code: Record<string, number>;
  wears: PlannedWear[];
  diary_entries: number;
  held: number;
  agreement: string | null;
  nothing_new: boolean;
  /** Only after keeping: its number, null if nothing was kept. */
  import?: number | null;
}

export interface ImportLine {
  id: number;
  at: string;
  file: string;
  rows: RowCounts;
  newest: boolean;
}

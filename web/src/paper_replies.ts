import type { DataTable, Figure } from "./replies";

/** What stands on a paper, from top to bottom (docs/formats/paper.schema.json). */
export type PaperBlock =
  | { kind: "heading"; text: string }
  | { kind: "sentence"; text: string; strong: boolean }
  | { kind: "list"; items: string[] }
  | { kind: "figure"; place: number }
  | { kind: "box"; title: string; sentences: string[]; first_aid: boolean }
  | { kind: "room_to_write"; label: string; lines: number }
  | { kind: "zero_to_ten"; question: string; at_0: string; at_10: string }
  | ({ kind: "table" } & DataTable)
  | { kind: "contact"; who: string; telephone: string | null };

export interface Paper {
  paper: string;
  title: string;
  reader: "client" | "coach" | "prescriber";
  one_page: boolean;
  blocks: PaperBlock[];
  foot: string;
  for_coach: string[];
  figures: Figure[];
  /** For a phone's width, in the same order; empty: the others do for it. */
  narrow_figures: Figure[];
}

export interface Papers {
  /** The eating screen is positive or open: numbers and food stay off the client's papers. */
  fewer_numbers: boolean;
  explaining: { paper: string; title: string }[];
}

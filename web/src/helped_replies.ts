import type { Finding, LastReading } from "./replies";
import type { AgreedChange } from "./plan_replies";

export interface DidItHelp {
  change: AgreedChange;
  none_because: string | null;
  finding: Finding | null;
  /** Why it does not go on though nobody ended it. */
  closed: string | null;
  else_changed: string[];
}

export interface LineRow {
  label: string;
  kind: string;
  words: string;
}

export interface WearNamed {
  label: string;
  days: string;
}

/** What was tried, kept, and is still unknown, over all wears. */
export interface Story {
  /** The latest very low, with how many there are: before everything. */
  very_low: string | null;
  /** Who leads, and what is not for the client. */
  care: string[];
  changes: DidItHelp[];
  /** The days of changes in words. */
  day_words: Record<string, string>;
  trials: Finding[];
  kept: string[];
  unknown: string[];
  next_lab_words: string;
  labs: { findings: Finding[] };
  line: LineRow[];
  wears: WearNamed[];
  /** By number, from 1: the last wear and the one that ended last before it. */
  last_two_wears: [number, number] | null;
  last_reading: LastReading | null;
}

/** Hours in range a day of later wears against earlier ones. */
export interface BeforeAfter {
  days_before: number;
  days_after: number;
  words: { before: string; after: string; before_of_all: string; after_of_all: string };
  finding: Finding;
}

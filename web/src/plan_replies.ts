import type { Finding, LastReading } from "./replies";

/** What was told of a change (docs/formats/plan.schema.json); what was not told is empty. */
export interface AgreedChange {
  words: string;
  agreed_on: string | null;
  check_on: string | null;
  when: string;
  where: string;
  how_often: string;
  if_not: string;
  how_checked: string;
  stop_when: string;
  outcome: string;
  ended_on: string | null;
}

export interface Candidate {
  code: string;
  words: string;
  says: "worth_agreeing" | "find_out_first" | "not_worth_it";
  own: Finding | null;
  effort: string;
  /** Code of the trial that would tell. */
  trial: string | null;
  cautions: string[];
  sentences: string[];
}

export interface PlanGate {
  sentence: string;
  opens: string;
  /** A letter to the prescriber is what may open it. */
  letter: boolean;
}

export interface Closed {
  code: string;
  words: string;
  gates: PlanGate[];
}

export interface Plan {
  says: string;
  sentence: string;
  ranked: Candidate[];
  closed: Closed[];
  check: { by: string; words: string } | null;
  agreed: AgreedChange | null;
  /** What has closed it since: it does not go on. */
  agreed_closed: string[];
  earlier: AgreedChange[];
  /** The days of changes in words. */
  day_words: Record<string, string>;
  today: string;
  last_reading: LastReading | null;
}

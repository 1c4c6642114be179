import type { Figure, Finding, LastReading } from "./replies";

export interface TrialTemplate {
  code: string;
  question: string;
  a: string;
  b: string;
  /** What is read: 'rise after dinner'. */
  read: string;
  keep_alike: string;
  /** Why it may not be offered now; empty: it may. */
  gates: string[];
}

export type Arm = "a" | "b";
export type Done = "not_known" | Arm | "neither";

export interface TrialDay {
  day: string;
  label: string;
  pair: number;
  allotted: Arm;
  has_come: boolean;
  done: Done | null;
}

export interface KeptTrial {
  number: number;
  question: string;
  a: string;
  b: string;
  state: "planned" | "running" | "ended" | "stopped";
  dates: string;
  seed: number;
  pairs: number;
  not_told: number;
  today: string | null;
  /** What has closed it since it was drawn: it is not to be gone on with. */
  gates: string[];
  stopped: { on: string; because: string } | null;
  days: TrialDay[];
}

export interface Trials {
  today: string;
  last_reading: LastReading | null;
  one_goes_on: boolean;
  templates: TrialTemplate[];
  kept: KeptTrial[];
}

export interface TrialPlan {
  question: string;
  gates: string[];
  refused_because: string | null;
  can_be_drawn: boolean;
  sentences: string[];
  pairs_needed: number | null;
  pairs: number | null;
  days: string | null;
}

export interface PairsRead {
  pairs: number;
  estimate: string;
  interval: string | null;
  p?: string;
  orders?: string;
}

export interface TrialRead extends KeptTrial {
  reading: {
    ended: boolean;
    days: { label: string; allotted: Arm; done: Done; value: string | null; none_because: string | null }[];
    as_allotted: PairsRead | null;
    as_done: PairsRead | null;
    finding: Finding;
    report: { item: string; text: string }[];
  };
  figure: Figure | null;
}

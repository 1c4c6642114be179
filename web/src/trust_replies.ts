// How far the data can be trusted, as the server tells it (docs/api/openapi.json, Trust).

export interface Stretch {
  from: string;
  to: string;
  begins: number;
  ends: number;
  name: string;
  seen: string;
  wear: string | null;
  /** Marked now: left out of the second answer. */
  marked: boolean;
  /** Whether a coach's word can make it count. */
  countable: boolean;
  /** The coach's telling about it, by its number; null: only the program's. */
  telling: number | null;
  why: string | null;
}

/** Sensors worn at once: which one is counted. */
export interface AtOnce {
  from: string;
  to: string;
  counted: string;
  why: string;
  /** By a coach, not by the rule. */
  chosen: boolean;
  others: string[];
}

export interface Trust {
  sentence: string;
  caveats: string[];
  needs: { enough: boolean; sentence: string }[];
  stretches: Stretch[];
  at_once: AtOnce[];
  /** How far those at once agree. */
  agreement: string | null;
  answers: { code: string; with_all: string; without_marked: string }[];
  last_reading: string;
}

// The practice's book, as the server tells it (docs/api/openapi.json: Audit, BackupTold, RecoveryKeyTold).

export interface Named {
  handle: string;
  name: string;
}

/** One line of who did what; `words` go on after the coach's name. */
export interface Deed {
  id: number;
  label: string;
  coach: Named | null;
  words: string;
  client: Named | null;
  other_coach: Named | null;
}

export interface Audit {
  lines: Deed[];
  /** To be asked for as `before`; null: these are the oldest. */
  earlier: number | null;
}

export interface BackupTold {
  last: { label: string; coach: string | null } | null;
  /** How many clients stand in the list of the erased. */
  erased: number;
}

export interface RecoveryKeyTold {
  last: { label: string; coach: string | null; opens: boolean } | null;
}

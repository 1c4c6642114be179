import type { Finding, LastReading } from "./replies";

export interface WearGone {
  label: string;
  /** In its place. */
  number: number;
  from: string;
  end: string;
  end_called: string;
  overpatch: boolean | null;
  site: string;
  from_words: string;
  lasted_words: string;
}

export interface Supply {
  bought: number;
  used: number;
  left: number;
}

/** How long wears last and why they end, how far readings are from finger-pricks, what is left. */
export interface Sensor {
  wears: WearGone[];
  accuracy: { pairs: number; zones_a_to_e: number[] };
  findings: Finding[];
  supplies: { sensors: Supply; sessions: Supply };
  last_reading: LastReading | null;
}

import type { Finding, LastReading } from "./replies";

export interface WearGone {
  label: string;
  from: string;
  end: string;
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

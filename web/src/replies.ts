// The server's replies as the page reads them (docs/api/openapi.json). Every sentence, civil label and
// number in words is the server's; the page only places them.

export interface SignedIn {
  coach: string;
  name: string;
  role: string;
  licence: string;
  token: string;
}

export type NeedKind = "unsafe" | "to tell" | "promised" | "due" | "ending" | "stuck" | "nothing due";

export interface Need {
  kind: NeedKind;
  why: string;
  next: string;
}

export interface CaseloadClient {
  handle: string;
  name: string;
  needs: Need[];
  /** Seven days, today last: whether the sensor saw anything. */
  seen: boolean[];
  /** Seven days, today last: whether anything was written. */
  written: boolean[];
}

export interface Caseload {
  as_of: string;
  clients: CaseloadClient[];
}

export interface Client {
  handle: string;
  name: string;
  last_reading: LastReading | null;
}

export interface DataTable {
  columns: string[];
  rows: string[][];
}

export interface Figure {
  id: string;
  title: string;
  alternative: string;
  svg: string;
  table: DataTable;
}

export interface Caveat {
  code: string;
  sentence: string;
}

export interface Evidence {
  used: number;
  used_what: string;
  left_out: number;
  left_out_why: string;
  method: string;
  adjusted_for: string[];
}

export interface Finding {
  code: string;
  question: string;
  answer: string;
  sentence: string;
  evidence: Evidence;
  caveats: Caveat[];
  next: { step: string; sentence: string | null };
  hours_gained?: number;
}

export interface NamedTable extends DataTable {
  name: string;
}

export interface Review {
  as_of: string;
  last_reading: string;
  findings: Finding[];
  goes_with: {
    none_because: string | null;
    meal_sentences: string[];
    questions: Finding[];
  };
  cannot_say: string[];
  one_thing_seen: string;
  one_thing_to_ask: string;
  one_thing_to_note: string;
  days: { from: string; hours: number; sentence: string }[];
  cautions: string[];
  figures: Figure[];
  measure_tables?: NamedTable[];
  sufficiency?: string[];
  rises_to_ask_about?: string[];
}

export interface DayInList {
  date: string;
  label: string;
  hours: number;
  readings: number;
  sentence: string;
  /** What makes it unlike the others, such as illness; most often empty. */
  unlike: string[];
}

export interface LabelledInstant {
  at: number;
  label: string;
}

export interface Wear {
  label: string;
  /** The first instant. */
  begin: number;
  /** From each instant to the next, as pairs: so many seconds, so many times. */
  steps: number[];
  value: (number | null)[];
  /** The civil time of each, in stretches so short that single readings matter. */
  labels?: string[];
  /** Readings beyond the sensor's limit, as they are told: 'below 40 mg/dL'. */
  beyond_limit: LabelledInstant[];
}

export interface LaneItem {
  at: number;
  end: number | null;
  label: string;
  text: string;
}

export interface Lane {
  name: string;
  items: LaneItem[];
}

export interface TraceMark {
  at: number;
  end: number | null;
  /** By the client's clock. */
  from: string;
  to: string;
  kind: string;
  label: string;
}

export interface FingerPrick {
  at: number;
  value: number;
  label: string;
}

export interface LastReading {
  label: string;
  age: string;
  /** What is known since: nothing. */
  since: string;
}

/** What stands around the readings of a stretch: its clock, its bands, what was marked and written. */
export interface Surroundings {
  zone: string;
  unit: string;
  /** Rising; levels are whole hundredths of the unit throughout. */
  band_edges: number[];
  /** Each edge as it is written. */
  edge_words: string[];
  /** One more than edges, the lowest first. */
  bands: string[];
  ticks: LabelledInstant[];
  day_borders: LabelledInstant[];
  /** Each level that occurs, and how it is written: 1005 as '10.0 mmol/L'. */
  level_words: { level: number; words: string }[];
  lanes: Lane[];
  marks: TraceMark[];
  finger_pricks: FingerPrick[];
  last_reading: LastReading | null;
}

/** A stretch of trace with everything that stands under it. */
export interface Stretched extends Surroundings {
  wears: Wear[];
}

/** Of one day: the civil one, of 23, 24 or 25 hours. */
export interface DaySheet extends Stretched {
  date: string;
  label: string;
  day: { begin: number; end: number };
  sentence: string;
  unlike: string[];
}

/** Of several days. */
export interface Trace extends Stretched {
  begin: number;
  end: number;
  /** Each, or of each hour the lowest and the highest. */
  readings: "all" | "extremes";
}

export interface Escalation {
  id: number;
  rung: string;
  sentence: string;
  whom: string;
  answer: string | null;
}

export interface Note {
  id: number;
  at: string;
  /** The day in words. */
  on: string;
  text: string;
}

export interface ClientPromise {
  id: number;
  text: string;
  due: string;
  due_words: string;
  kept_at: string | null;
  kept_words: string | null;
}

export interface Change {
  client: string | null;
  what: string;
}

import type { Stretched } from "./replies";

export interface TraceRow {
  at: number;
  label: string;
  values: (number | null)[];
  /** The values as they are told; one beyond the limit by the limit, a gap by nothing. */
  told: string[];
}

/** A level as its unit is written: whole mg/dL, tenths of a mmol/L. */
export function levelText(value: number, unit: string): string {
  return unit === "mmol/L" ? value.toFixed(1) : value.toFixed(0);
}

/** Whether a wear was read while one told before it was: the lines would stand on one another. */
export function wornBeside(trace: Stretched, which: number): boolean {
  const { at } = trace.wears[which] ?? { at: [] };
  const ends = (instants: number[]): [number, number] => [instants[0] ?? 0, instants[instants.length - 1] ?? 0];
  const [begin, end] = ends(at);
  return trace.wears.slice(0, which).some((other) => {
    const [otherBegin, otherEnd] = ends(other.at);
    return otherBegin <= end && begin <= otherEnd;
  });
}

/** Where the first of the rising numbers stands that is not below the one asked for. */
export function firstFrom(rising: number[], asked: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((rising[middle] ?? 0) < asked) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Each instant at which some wear has a reading or a gap, rising. */
export function instantsOf(trace: Stretched): number[] {
  const [only, ...others] = trace.wears;
  if (!only) return [];
  if (others.length === 0) return only.at;
  const all = Float64Array.from(trace.wears.flatMap((wear) => wear.at)).sort();
  return Array.from(all.filter((at, index) => at !== all[index - 1]));
}

/** What all wears read at one of the instants. */
export function rowAt(trace: Stretched, at: number): TraceRow {
  const row: TraceRow = { at, label: "", values: [], told: [] };
  for (const wear of trace.wears) {
    const index = firstFrom(wear.at, at);
    const value = wear.at[index] === at ? (wear.value[index] ?? null) : null;
    row.values.push(value);
    const beyond = wear.beyond_limit.find((reading) => reading.at === at)?.label;
    row.told.push(value === null ? "" : (beyond ?? `${levelText(value, trace.unit)} ${trace.unit}`));
    if (wear.at[index] === at) row.label ||= wear.labels?.[index] ?? "";
  }
  return row;
}

/** As uPlot takes it: times, then each wear; undefined joins over another wear's instants, null is a gap. */
export function columnsOf(trace: Stretched): [number[], ...(number | null | undefined)[][]] {
  const at = instantsOf(trace);
  const values = trace.wears.map((wear) => {
    if (wear.at === at) return wear.value;
    let next = 0;
    return at.map((instant) => (wear.at[next] === instant ? wear.value[next++] : undefined));
  });
  return [at, ...values];
}

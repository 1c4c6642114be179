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

/** All wears on one time line: a row for each instant at which some wear has a reading or a gap. */
export function mergedWears(trace: Stretched): TraceRow[] {
  const rows = new Map<number, TraceRow>();
  trace.wears.forEach((wear, which) => {
    const beyond = new Map(wear.beyond_limit.map((reading) => [reading.at, reading.label]));
    wear.at.forEach((at, index) => {
      let row = rows.get(at);
      if (!row) {
        row = { at, label: "", values: trace.wears.map(() => null), told: trace.wears.map(() => "") };
        rows.set(at, row);
      }
      const value = wear.value[index] ?? null;
      row.values[which] = value;
      row.told[which] = value === null ? "" : (beyond.get(at) ?? `${levelText(value, trace.unit)} ${trace.unit}`);
      row.label ||= wear.labels?.[index] ?? "";
    });
  });
  return [...rows.values()].sort((a, b) => a.at - b.at);
}

/** As uPlot takes it: times, then each wear; undefined joins over another wear's instants, null is a gap. */
export function columnsOf(trace: Stretched): [number[], ...(number | null | undefined)[][]] {
  const rows = mergedWears(trace);
  const at = rows.map((row) => row.at);
  const values = trace.wears.map((wear) => {
    const own = new Map(wear.at.map((instant, index) => [instant, wear.value[index] ?? null]));
    return at.map((instant) => own.get(instant));
  });
  return [at, ...values];
}

import type { Stretched } from "./replies";

export interface TraceRow {
  at: number;
  label: string;
  values: (number | null)[];
}

/** A level as its unit is written: whole mg/dL, tenths of a mmol/L. */
export function levelText(value: number, unit: string): string {
  return unit === "mmol/L" ? value.toFixed(1) : value.toFixed(0);
}

/** All wears on one time line: a row for each instant at which some wear has a reading or a gap. */
export function mergedWears(trace: Stretched): TraceRow[] {
  const rows = new Map<number, TraceRow>();
  trace.wears.forEach((wear, which) => {
    wear.at.forEach((at, index) => {
      let row = rows.get(at);
      if (!row) {
        row = { at, label: "", values: trace.wears.map(() => null) };
        rows.set(at, row);
      }
      row.values[which] = wear.value[index] ?? null;
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

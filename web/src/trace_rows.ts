import type { Stretched, Surroundings, Wear } from "./replies";

/** A wear with each of its instants. */
export interface ReadWear extends Omit<Wear, "begin" | "steps"> {
  at: number[];
}

export interface ReadTrace extends Surroundings {
  wears: ReadWear[];
  /** How each level is told. */
  words: Map<number, string>;
}

export interface TraceRow {
  at: number;
  label: string;
  values: (number | null)[];
  /** The values as they are told; one beyond the limit by the limit, a gap by nothing. */
  told: string[];
}

/** A reply with each instant of its wears, which it tells by steps. */
export function unfolded(trace: Stretched): ReadTrace {
  const wears = trace.wears.map(({ begin, steps, ...wear }) => {
    const at = new Array<number>(wear.value.length);
    let instant = begin;
    at[0] = begin;
    for (let pair = 0, index = 1; pair + 1 < steps.length; pair += 2) {
      const step = steps[pair] ?? 0;
      for (let times = steps[pair + 1] ?? 0; times > 0; --times) at[index++] = instant += step;
    }
    return { ...wear, at };
  });
  const words = new Map(trace.level_words.map((one) => [one.level, one.words]));
  return { ...trace, wears, words };
}

/**
 * Wears that share a line: one sensor after another. A sensor worn beside another one has a line of its own, which
 * would stand on the first.
 */
export function linesOf(trace: ReadTrace): ReadWear[][] {
  const lines: ReadWear[][] = [];
  const lastOf = (line: ReadWear[]) => line[line.length - 1]?.at.slice(-1)[0] ?? -Infinity;
  for (const wear of trace.wears) {
    const free = lines.find((line) => lastOf(line) < (wear.at[0] ?? 0));
    if (free) free.push(wear);
    else lines.push([wear]);
  }
  return lines;
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

/** The instants of all, rising, each once. */
function merged(all: { at: number[] }[]): number[] {
  const rising = Float64Array.from(all.flatMap(({ at }) => at)).sort();
  return Array.from(rising.filter((at, index) => at !== rising[index - 1]));
}

/** Each instant at which some wear has a reading or a gap, rising. */
export function instantsOf(trace: ReadTrace): number[] {
  return merged(trace.wears);
}

/** What all wears read at one of the instants. */
export function rowAt(trace: ReadTrace, at: number): TraceRow {
  const row: TraceRow = { at, label: "", values: [], told: [] };
  for (const wear of trace.wears) {
    const index = firstFrom(wear.at, at);
    const value = wear.at[index] === at ? (wear.value[index] ?? null) : null;
    row.values.push(value);
    const beyond = wear.beyond_limit.find((reading) => reading.at === at)?.label;
    row.told.push(value === null ? "" : (beyond ?? trace.words.get(value) ?? ""));
    if (wear.at[index] === at) row.label ||= wear.labels?.[index] ?? "";
  }
  return row;
}

type Values = (number | null | undefined)[];

/** As uPlot takes it: times, then each line; undefined joins over another line's instants, null is a gap. */
export function columnsOf(lines: ReadWear[][]): [number[], ...Values[]] {
  const drawn = lines.map((line) => {
    let at: number[] = [];
    let value: Values = [];
    for (const wear of line) {
      // From one sensor to the next no line is drawn.
      const last = at[at.length - 1];
      at = last === undefined ? wear.at : at.concat(last + 1, wear.at);
      value = last === undefined ? wear.value : value.concat(null, wear.value);
    }
    return { at, value };
  });
  if (drawn.length === 1 && drawn[0]) return [drawn[0].at, drawn[0].value];
  const all = merged(drawn);
  const values = drawn.map((line) => {
    let next = 0;
    return all.map((instant) => (line.at[next] === instant ? line.value[next++] : undefined));
  });
  return [all, ...values];
}

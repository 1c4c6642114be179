import { useRef, useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { isGone, type Reading, useReading } from "./reading";
import type { Trace } from "./replies";

export interface TraceReading extends Reading<Trace> {
  /** Asks for each reading where only the extremes of each hour are there; null: each is there. */
  lookCloser: (() => void) | null;
}

/**
 * The last days of a client. Of ninety first the extremes of each hour, as much as their width has room for: the one
 * trace stands until the other has come.
 */
export function useTrace(client: string, days: 14 | 90): TraceReading {
  const [closer, setCloser] = useState(days === 14);
  const path = `/trace?days=${days}${closer ? "" : "&readings=extremes"}`;
  const { value, problem, again } = useReading<Trace>(ofClient(client, path), client);
  const last = useRef<Trace | null>(null);
  if (value || (problem && isGone(problem))) last.current = value;
  return { value: last.current, problem, again, lookCloser: closer ? null : () => setCloser(true) };
}

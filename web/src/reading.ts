import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { Problem, read } from "./ask_server";
import { changes, concerns } from "./live";
import { words } from "./words";

export interface Reading<T> {
  value: T | null;
  problem: Problem | null;
  again: () => void;
}

/** Erased, revoked or closed meanwhile: what was shown of it may not stand any longer. */
export const isGone = (failure: Problem): boolean => failure.status === 404 || failure.status === 403 || failure.status === 410;

/**
 * Reads a path and keeps reading it: again when a change concerns it. While it is read again the old
 * value stands, so that nothing jumps, until the answer is that it is gone. `client` null: any change concerns it.
 */
export function useReading<T>(path: string, client: string | null): Reading<T> {
  const [value, setValue] = useState<T | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [round, setRound] = useState(0);
  // Asked for while the place is drawn, before the one that was there is taken away.
  const asked = useRef("");
  const ahead = useRef<Promise<T> | null>(null);
  if (asked.current !== path) {
    asked.current = path;
    ahead.current = read<T>(path);
  }
  const shown = useRef(path);

  useLayoutEffect(() => {
    let wanted = true;
    if (shown.current !== path) {
      shown.current = path;
      setValue(null);
    }
    const reply = ahead.current ?? read<T>(path);
    ahead.current = null;
    reply.then(
      (fresh) => {
        if (!wanted) return;
        setValue(fresh);
        setProblem(null);
      },
      (failure: unknown) => {
        if (!wanted) return;
        if (failure instanceof Problem && isGone(failure)) setValue(null);
        setProblem(failure instanceof Problem ? failure : new Problem(0, "", words.problem.unknown));
      },
    );
    return () => {
      wanted = false;
    };
  }, [path, round]);

  useEffect(
    () =>
      changes((change) => {
        if (concerns(change, client)) setRound((n) => n + 1);
      }),
    [client],
  );

  return { value, problem, again: () => setRound((n) => n + 1) };
}

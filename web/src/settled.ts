import type { Signal } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";

/** What a signal held when it last came to rest: what need not follow each frame follows this. */
export function useSettled<T>(signal: Signal<T>, afterMilliseconds = 250): T {
  const [settled, setSettled] = useState(signal.peek());
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stop = signal.subscribe((value) => {
      clearTimeout(timer);
      timer = setTimeout(() => setSettled(value), afterMilliseconds);
    });
    return () => {
      stop();
      clearTimeout(timer);
    };
  }, [signal, afterMilliseconds]);
  return settled;
}

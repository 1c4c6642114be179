import { useLayoutEffect, useRef } from "preact/hooks";
import type { RefObject } from "preact";

/** The button that opened something gets the keyboard back when that is closed again. */
export function useGivenBack(open: boolean): RefObject<HTMLButtonElement | null> {
  const button = useRef<HTMLButtonElement>(null);
  const was = useRef(open);
  useLayoutEffect(() => {
    if (was.current && !open) button.current?.focus();
    was.current = open;
  }, [open]);
  return button;
}

/** What is first shown because of a press of the coach's gets the keyboard: the button that was pressed is gone. */
export function useTaken<E extends HTMLElement>(now: boolean): RefObject<E | null> {
  const taker = useRef<E>(null);
  useLayoutEffect(() => {
    if (now) taker.current?.focus();
  }, [now]);
  return taker;
}

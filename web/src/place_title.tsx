import { useLayoutEffect, useRef } from "preact/hooks";
import { session } from "./session";
import { words } from "./words";

/** The heading of a place: it names the window too, and takes the keyboard when the place opens. */
export function PlaceTitle({ text, focus = true }: { text: string; focus?: boolean }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const signedIn = session.value !== null;
  useLayoutEffect(() => {
    // Behind the sign-in a window bears no client's name.
    if (heading.current?.closest("[hidden]") === null) document.title = `${text} - ${words.product}`;
  }, [text, signedIn]);
  useLayoutEffect(() => {
    if (focus) heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1}>
      {text}
    </h1>
  );
}

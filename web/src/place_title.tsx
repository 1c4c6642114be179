import { useEffect, useRef } from "preact/hooks";
import { words } from "./words";

/** The heading of a place: it names the window too, and takes the keyboard when the place opens. */
export function PlaceTitle({ text, focus = true }: { text: string; focus?: boolean }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${text} - ${words.product}`;
  }, [text]);
  useEffect(() => {
    if (focus) heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <h1 ref={heading} tabIndex={-1}>
      {text}
    </h1>
  );
}

import type { ComponentChildren } from "preact";
import { addressOf, goTo, type Place } from "./place";

interface Props {
  to: Place;
  class?: string;
  children: ComponentChildren;
  "data-client"?: string;
  "data-date"?: string;
}

/** A link that changes the place without loading the page anew, yet opens in a new tab like any other. */
export function PlaceLink({ to, children, ...rest }: Props) {
  return (
    <a
      {...rest}
      href={addressOf(to)}
      onClick={(event) => {
        if (event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey) return;
        event.preventDefault();
        goTo(to);
      }}
    >
      {children}
    </a>
  );
}

import { signal } from "@preact/signals";

const kept = "tracewright-turned";

function remembered(): boolean {
  try {
    return sessionStorage.getItem(kept) === "yes";
  } catch {
    return false;
  }
}

/** Whether the screen is turned to the client: nothing of other clients, no notes, the client's own words. */
export const turned = signal(remembered());

/** Kept over a reload, so that nothing of the coach's shows by accident. */
export function turnScreen(on: boolean): void {
  turned.value = on;
  try {
    sessionStorage.setItem(kept, on ? "yes" : "no");
  } catch {
    // Without storage it lasts until the page is loaded anew.
  }
  scrollTo(0, 0);
}

import { signal } from "@preact/signals";

const kept = "tracewright-single-keys";

function remembered(): boolean {
  try {
    return localStorage.getItem(kept) !== "off";
  } catch {
    return true;
  }
}

/** Whether single keys do something (WCAG 2.2, 2.1.4: they can be turned off). */
export const singleKeys = signal(remembered());

export function setSingleKeys(on: boolean): void {
  singleKeys.value = on;
  try {
    localStorage.setItem(kept, on ? "on" : "off");
  } catch {
    // Without storage the choice lasts until the page is closed.
  }
}

/** Whether a key press is typing, or belongs to an open dialog, and so is nobody else's. */
export function belongsElsewhere(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return true;
  const target = event.target;
  if (!(target instanceof Element)) return false;
  // An open dialog has all keys, even where nothing in it has the focus any more.
  if (document.querySelector("dialog[open]")) return true;
  // A field of a dialog that has just closed may keep the focus until the next frame: nobody types there.
  return target.closest("input, textarea, select, [contenteditable]") !== null && target.closest("dialog:not([open])") === null;
}

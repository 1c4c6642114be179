import { useEffect } from "preact/hooks";
import { belongsElsewhere, singleKeys } from "./keys";
import { goTo, place } from "./place";
import { turned } from "./turned_screen";
import { openWords } from "./words_panel_state";

/** The client that a key speaks of: the one that is open, else the one whose row has the keyboard. */
function clientInQuestion(): string | null {
  const here = place.value;
  if ("client" in here) return here.client;
  const row = document.activeElement?.closest<HTMLElement>("[data-client]");
  return row?.dataset["client"] ?? document.querySelector<HTMLElement>("[data-client]")?.dataset["client"] ?? null;
}

function goBack(): void {
  const here = place.value;
  if ("client" in here && here.at !== "review") goTo({ at: "review", client: here.client });
  else if (here.at !== "caseload") goTo({ at: "caseload" });
}

/** Escape leaves a field first, so that the single keys work again from anywhere. */
function leaveField(event: KeyboardEvent): boolean {
  const field = event.target;
  if (event.key !== "Escape" || event.defaultPrevented || document.querySelector("dialog[open]")) return false;
  if (!(field instanceof HTMLElement) || !field.matches("input, textarea, select")) return false;
  field.blur();
  return true;
}

function press(event: KeyboardEvent): void {
  if (leaveField(event)) return;
  // Turned to the client, no key opens notes or leads to other clients.
  if (turned.value || belongsElsewhere(event)) return;
  if (event.key === "Escape") {
    goBack();
    return;
  }
  if (!singleKeys.value) return;
  const client = clientInQuestion();
  if (event.key === "?") openWords({ what: "keys" });
  else if (event.key === "n" && client) openWords({ what: "notes", client });
  else if (event.key === "p" && client) openWords({ what: "promises", client });
  else return;
  event.preventDefault();
}

/** The keys that work anywhere on the page. */
export function KeyPresses() {
  useEffect(() => {
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, []);
  return null;
}

import { signal } from "@preact/signals";

/** Where the coach is. Each place has an address of its own, so that it can be kept and reloaded. */
export type Place =
  | { at: "caseload" }
  | { at: "review"; client: string }
  | { at: "day"; client: string; date: string }
  | { at: "trace"; client: string }
  | { at: "nowhere" };

/** The place of an address; what no place has is 'nowhere'. */
export function placeOf(path: string): Place {
  const parts = path.split("/").filter((part) => part !== "");
  if (parts.length === 0) return { at: "caseload" };
  let client = "";
  try {
    client = decodeURIComponent(parts[1] ?? "");
  } catch {
    return { at: "nowhere" };
  }
  if (parts[0] === "client" && client) {
    if (parts.length === 2) return { at: "review", client };
    if (parts.length === 3 && parts[2] === "trace") return { at: "trace", client };
    const date = parts[3] ?? "";
    if (parts.length === 4 && parts[2] === "day" && /^\d{4}-\d{2}-\d{2}$/.test(date)) {
      return { at: "day", client, date };
    }
  }
  return { at: "nowhere" };
}

export function addressOf(place: Place): string {
  switch (place.at) {
    case "review":
      return `/client/${encodeURIComponent(place.client)}`;
    case "day":
      return `/client/${encodeURIComponent(place.client)}/day/${place.date}`;
    case "trace":
      return `/client/${encodeURIComponent(place.client)}/trace`;
    default:
      return "/";
  }
}

export const place = signal<Place>({ at: "caseload" });
/** The client that was open last: the caseload puts the keyboard back there. */
export const cameFrom = signal<string | null>(null);

export function goTo(next: Place): void {
  if ("client" in place.value) cameFrom.value = place.value.client;
  history.pushState(null, "", addressOf(next));
  place.value = next;
  scrollTo(0, 0);
}

export function followAddress(): void {
  place.value = placeOf(location.pathname);
  addEventListener("popstate", () => {
    if ("client" in place.value) cameFrom.value = place.value.client;
    place.value = placeOf(location.pathname);
  });
}

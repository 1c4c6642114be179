import { signal } from "@preact/signals";

/** Places that need nothing but the client; each is its own word in the address. */
const placesOfClient = ["trace", "ninety-days", "facts", "trust", "goes-with", "plan", "helped", "sensor", "bring-in", "shares", "who-did-what"] as const;
export type PlaceOfClient = (typeof placesOfClient)[number];
const isPlaceOfClient = (word: string): word is PlaceOfClient => (placesOfClient as readonly string[]).includes(word);

/** Places of the whole practice, the same. */
const placesOfPractice = ["new-client", "writing", "practice-book"] as const;
type PlaceOfPractice = (typeof placesOfPractice)[number];
const isPlaceOfPractice = (word: string | undefined): word is PlaceOfPractice => (placesOfPractice as readonly (string | undefined)[]).includes(word);

/** Where the coach is. Each place has an address of its own, so that it can be kept and reloaded. */
export type Place =
  | { at: "caseload" }
  | { at: "review"; client: string }
  | { at: "day"; client: string; date: string }
  | { at: "diary"; client: string; date: string }
  | { at: PlaceOfPractice }
  | { at: PlaceOfClient; client: string }
  | { at: "nowhere" };

/** The place of an address; what no place has is 'nowhere'. */
export function placeOf(path: string): Place {
  const parts = path.split("/").filter((part) => part !== "");
  if (parts.length === 0) return { at: "caseload" };
  const [first] = parts;
  if (parts.length === 1 && isPlaceOfPractice(first)) return { at: first };
  let client = "";
  try {
    client = decodeURIComponent(parts[1] ?? "");
  } catch {
    return { at: "nowhere" };
  }
  if (parts[0] === "client" && client) {
    if (parts.length === 2) return { at: "review", client };
    const word = parts[2] ?? "";
    if (parts.length === 3 && isPlaceOfClient(word)) return { at: word, client };
    // The server knows which day it is by the client's clock.
    if (parts.length === 3 && word === "diary") return { at: "diary", client, date: "today" };
    const date = parts[3] ?? "";
    if (parts.length === 4 && (word === "day" || word === "diary") && /^\d{4}-\d{2}-\d{2}$/.test(date)) {
      return { at: word, client, date };
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
    case "diary":
      return `/client/${encodeURIComponent(place.client)}/diary${place.date === "today" ? "" : `/${place.date}`}`;
    case "new-client":
    case "writing":
    case "practice-book":
      return `/${place.at}`;
    case "caseload":
    case "nowhere":
      return "/";
    default:
      return `/client/${encodeURIComponent(place.client)}/${place.at}`;
  }
}

export const place = signal<Place>({ at: "caseload" });
/** The client that was open last: the caseload puts the keyboard back there. */
export const cameFrom = signal<string | null>(null);
/** The day that was open just before: the review's list of days puts the keyboard back there. */
export const cameFromDay = signal<string | null>(null);

function leave(): void {
  if ("client" in place.value) cameFrom.value = place.value.client;
  cameFromDay.value = place.value.at === "day" ? place.value.date : null;
}

export function goTo(next: Place): void {
  leave();
  history.pushState(null, "", addressOf(next));
  place.value = next;
  scrollTo(0, 0);
}

export function followAddress(): void {
  place.value = placeOf(location.pathname);
  addEventListener("popstate", () => {
    leave();
    place.value = placeOf(location.pathname);
  });
}

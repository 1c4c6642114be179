import { signal } from "@preact/signals";

/** What is open over the page: notes or promises of a client, or the list of keys. */
export type OpenWords = { what: "notes" | "promises"; client: string } | { what: "keys" };

export const openedWords = signal<OpenWords | null>(null);

export function openWords(what: OpenWords): void {
  openedWords.value = what;
}

export function closeWords(): void {
  openedWords.value = null;
}

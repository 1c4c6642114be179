// Escape closes notes and promises, and is the way back too: what is half-written stands there again when they are
// opened again. In memory alone, and gone when the coach signs out.

const drafts = new Map<string, string>();

export const draftOf = (field: string, client: string): string => drafts.get(`${field} ${client}`) ?? "";

export function keepDraft(field: string, client: string, text: string): void {
  if (text === "") drafts.delete(`${field} ${client}`);
  else drafts.set(`${field} ${client}`, text);
}

export const forgetDrafts = (): void => drafts.clear();

import type { AgreedChange } from "./plan_replies";

/** A change with its days in the server's words. */
export function inWords(change: AgreedChange, days: Record<string, string>): AgreedChange {
  const said = (day: string | null) => (day === null ? null : (days[day] ?? day));
  return { ...change, agreed_on: said(change.agreed_on), check_on: said(change.check_on), ended_on: said(change.ended_on) };
}

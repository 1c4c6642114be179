import type { LastReading } from "./replies";
import { words } from "./words";

/** When the last reading was and how old it is (docs/safety.md, 6). */
export function LastReadingLine({ last }: { last: LastReading | null }) {
  return <p class="age">{last ? words.day.lastReading(last.label, last.age, last.since) : words.day.noReading}</p>;
}

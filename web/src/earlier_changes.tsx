import type { AgreedChange } from "./plan_replies";
import { planWords } from "./plan_words";

export function EarlierChanges({ earlier }: { earlier: AgreedChange[] }) {
  if (earlier.length === 0) return null;
  return (
    <section>
      <h2>{planWords.earlier}</h2>
      <ul>
        {earlier.map((change, at) => (
          <li key={at}>
            “{change.words}”{" "}
            <span class="quiet">
              {change.agreed_on && `${planWords.agreedOn(change.agreed_on)}, `}
              {change.ended_on ? planWords.endedOn(planWords.how[change.outcome] ?? change.outcome, change.ended_on) : ""}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

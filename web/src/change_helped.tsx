import { FindingBox } from "./finding_box";
import type { DidItHelp } from "./helped_replies";
import { helpedWords } from "./helped_words";
import { planWords } from "./plan_words";

/** One change that was agreed, and what the wears on both sides of it say. */
export function ChangeHelped({ helped }: { helped: DidItHelp }) {
  const { change, finding } = helped;
  const how = helped.closed === null ? (planWords.how[change.outcome] ?? change.outcome) : "";
  return (
    <section class="change-helped">
      <h3>“{change.words}”</h3>
      <p class="quiet">{[change.agreed_on && helpedWords.agreed(change.agreed_on), how].filter(Boolean).join(", ")}</p>
      {helped.closed !== null && <p class="wrong">{helped.closed}</p>}
      {helped.none_because !== null && <p>{helpedWords.nothing(helped.none_because)}</p>}
      {finding && <FindingBox finding={finding} under />}
      {helped.else_changed.length > 0 && (
        <ul>
          {helped.else_changed.map((other) => (
            <li key={other}>{helpedWords.also(other)}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

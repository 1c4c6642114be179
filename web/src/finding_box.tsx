import type { Finding } from "./replies";
import { words } from "./words";

/** The method of a finding, in sentences. */
export function methodOf(finding: Finding): string {
  const { evidence } = finding;
  const parts = [words.review.method(evidence.method)];
  if (evidence.used_what) parts.push(words.review.used(evidence.used, evidence.used_what));
  if (evidence.left_out > 0) parts.push(words.review.leftOut(evidence.left_out, evidence.left_out_why));
  if (evidence.adjusted_for.length > 0) parts.push(words.review.adjusted(evidence.adjusted_for.join(", ")));
  return parts.join(" ");
}

/** A question and its answer: the sentence first, then what tempers it, what next, and the method if asked for. `under`: below a heading of its own kind. */
export function FindingBox({ finding, leads = false, under = false }: { finding: Finding; leads?: boolean; under?: boolean }) {
  const Heading = leads ? "h2" : under ? "h4" : "h3";
  return (
    <section class={leads ? "finding leads" : "finding"}>
      <Heading>{finding.question}</Heading>
      <p class="sentence">{finding.sentence}</p>
      {finding.caveats.length > 0 && (
        <ul>
          {finding.caveats.map((caveat) => (
            <li key={caveat.sentence}>{caveat.sentence}</li>
          ))}
        </ul>
      )}
      {finding.next.sentence && <p class="next">{finding.next.sentence}</p>}
      {(finding.evidence.method || finding.evidence.used_what) && (
        <details>
          <summary>
            {words.review.how}
            <span class="unseen">: {finding.question}</span>
          </summary>
          <p>{methodOf(finding)}</p>
        </details>
      )}
    </section>
  );
}

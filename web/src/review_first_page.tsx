import { FigureBox } from "./figure_box";
import { FindingBox } from "./finding_box";
import type { Finding, Review } from "./replies";
import { words } from "./words";

/** Why the client came stands before anything that was measured. */
const inTheirWords = (finding: Finding): boolean => finding.code === "why_they_came";

/** The first sheet of a review: why they came, sentences, the hours bar, what to take along, what can't be said. */
export function ReviewFirstPage({ review, findings }: { review: Review; findings: Finding[] }) {
  const said = new Set(findings.flatMap((finding) => finding.caveats.map((caveat) => caveat.sentence)));
  const notYetSaid = review.cannot_say.filter((sentence) => !said.has(sentence));
  const figure = (id: string) => review.figures.find((drawn) => drawn.id === id);
  return (
    <>
      <h2>{words.review.says}</h2>
      {findings.filter(inTheirWords).map((finding) => (
        <FindingBox key={finding.code} finding={finding} />
      ))}
      <FigureBox figure={figure("hours_bar")} narrow={figure("hours_bar_narrow")} />
      {findings
        .filter((finding) => !inTheirWords(finding))
        .map((finding, at) => (
          <FindingBox key={at} finding={finding} />
        ))}
      <h2>{words.review.take}</h2>
      <dl class="three">
        <dt>{words.review.seen}</dt>
        <dd>{review.one_thing_seen}</dd>
        <dt>{words.review.ask}</dt>
        <dd>{review.one_thing_to_ask}</dd>
        <dt>{words.review.note}</dt>
        <dd>{review.one_thing_to_note}</dd>
      </dl>
      <h2>{words.review.cannotSay}</h2>
      <ul>
        {notYetSaid.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </>
  );
}

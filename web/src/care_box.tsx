import type { Care } from "./facts_replies";
import { factsWords } from "./facts_words";

const texts = factsWords.closed;

/** What may not be offered now, and which answer closes it. */
export function CareBox({ care }: { care: Care }) {
  return (
    <section class="facts">
      <h2>{texts.title}</h2>
      {care.closed.length === 0 && <p>{texts.none}</p>}
      <ul class="plain-list">
        {care.closed.map(({ sentence, not_asked, closes }) => (
          <li key={sentence}>
            {not_asked && <b>{texts.notAsked} </b>}
            {sentence}
            <br />
            <span class="quiet">{texts.closes(closes)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

import { useState } from "preact/hooks";
import { PaperPreview } from "./paper_preview";
import type { Closed } from "./plan_replies";
import { planWords } from "./plan_words";

interface Reason {
  sentence: string;
  opens: string;
  letter: boolean;
  closes: Closed[];
}

/** Most gates close several changes: each is told once, with what it closes. */
export function reasonsOf(closed: Closed[]): Reason[] {
  const reasons: Reason[] = [];
  for (const change of closed) {
    for (const gate of change.gates) {
      const told = reasons.find((reason) => reason.sentence === gate.sentence && reason.opens === gate.opens);
      if (told) told.closes.push(change);
      else reasons.push({ ...gate, closes: [change] });
    }
  }
  return reasons;
}

/** Why something is not offered, and what opens it. */
export function ClosedList({ client, closed }: { client: string; closed: Closed[] }) {
  const [about, setAbout] = useState<string | null>(null);
  if (closed.length === 0) return null;
  return (
    <section>
      <h2>{planWords.closed}</h2>
      <p class="quiet">{planWords.closedNote}</p>
      <ul class="closed">
        {reasonsOf(closed).map((reason) => (
          <li key={reason.sentence}>
            <p class="sentence">{reason.sentence}</p>
            {reason.opens && <p>{reason.opens}</p>}
            <p class="quiet">{planWords.closes(reason.closes.map((change) => change.words).join("; "))}</p>
            {reason.letter && (
              <button type="button" aria-label={`${planWords.letter}: ${reason.sentence}`} onClick={() => setAbout(reason.closes[0]?.code ?? null)}>
                {planWords.letter}
              </button>
            )}
          </li>
        ))}
      </ul>
      {about && <PaperPreview client={client} paper="letter" query={`?candidate=${encodeURIComponent(about)}`} close={() => setAbout(null)} />}
    </section>
  );
}

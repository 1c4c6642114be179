import { useRef, useState } from "preact/hooks";
import { DeedLine } from "./deed_line";
import { Loading } from "./loading";
import type { Audit } from "./practice_book_replies";
import { practiceBookWords } from "./practice_book_words";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";

const texts = practiceBookWords.deeds;

function pathOf(client: string | null, before: number | null): string {
  const asked = new URLSearchParams();
  if (client !== null) asked.set("client", client);
  if (before !== null) asked.set("before", String(before));
  return `/api/audit?${asked}`;
}

/** Who did and saw what, a page at a time, the newest first; of one client, or of the practice. */
export function DeedList({ client }: { client: string | null }) {
  const [before, setBefore] = useState<number | null>(null);
  const { value, problem, again } = useReading<Audit>(pathOf(client, before), client);
  const heading = useRef<HTMLHeadingElement>(null);
  // The page begins anew, so the keyboard does too.
  const turn = (to: number | null) => {
    setBefore(to);
    heading.current?.focus();
  };
  const earlier = value?.earlier ?? null;
  return (
    <section>
      <h2 ref={heading} tabIndex={-1}>
        {client === null ? texts.title : before === null ? texts.newestFirst : texts.earlierOnes}
      </h2>
      <p>{texts.lead}</p>
      <p class="quiet">{client === null ? texts.clock : texts.clockOfClient}</p>
      {problem && <ProblemBox sentence={problem.message} again={again} />}
      {!value && !problem && <Loading text={texts.loading} />}
      {value?.lines.length === 0 && <p class="quiet">{texts.none}</p>}
      <ol class="deeds">
        {value?.lines.map((deed) => (
          <DeedLine key={deed.id} deed={deed} withClient={client === null} />
        ))}
      </ol>
      {value && before !== null && earlier === null && <p class="quiet">{texts.oldest}</p>}
      {value && (before !== null || earlier !== null) && (
        <p class="actions">
          {earlier !== null && (
            <button type="button" onClick={() => turn(earlier)}>
              {texts.earlier}
            </button>
          )}
          {before !== null && (
            <button type="button" onClick={() => turn(null)}>
              {texts.newest}
            </button>
          )}
        </p>
      )}
    </section>
  );
}

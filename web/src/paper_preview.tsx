import { useLayoutEffect, useRef } from "preact/hooks";
import { ofClient } from "./ask_server";
import { Loading } from "./loading";
import { PaperBody } from "./paper_body";
import type { Paper } from "./paper_replies";
import { planWords } from "./plan_words";
import { useReading } from "./reading";
import { words } from "./words";

const say = planWords.papers;

/** A paper as its reader will hold it, with what only the coach is told beside it, and its prints. */
export function PaperPreview({ client, paper, query = "", close }: { client: string; paper: string; query?: string; close: () => void }) {
  const path = ofClient(client, `/papers/${paper}`);
  const { value, problem, again } = useReading<Paper>(path + query, client);
  const heading = useRef<HTMLHeadingElement>(null);
  // Where the keyboard was: closed, the paper gives it back.
  const opener = useRef(document.activeElement);
  const closeAndReturn = () => {
    if (opener.current instanceof HTMLElement) opener.current.focus();
    close();
  };
  useLayoutEffect(() => heading.current?.focus(), [value?.title]);
  return (
    <section class="paper-preview" aria-busy={!value && !problem}>
      {!value && !problem && <Loading text={say.loading} />}
      {!value && problem && (
        <p class="empty" role="alert">
          {problem.message}{" "}
          {problem.code !== "not_made" && (
            <button type="button" onClick={again}>
              {words.tryAgain}
            </button>
          )}
        </p>
      )}
      {value && (
        <>
          <h3 ref={heading} tabIndex={-1}>
            {value.title}
          </h3>
          <p class="actions">
            <a href={`${path}/print${query}`} target="_blank" rel="noopener" aria-label={`${value.title}: ${say.pdf}`}>
              {say.pdf}
            </a>
            <a href={`${path}/page${query}`} target="_blank" rel="noopener" aria-label={`${value.title}: ${say.page}`}>
              {say.page}
            </a>
          </p>
          {value.for_coach.length > 0 && (
            <aside class="for-coach" aria-label={say.forCoach}>
              <p class="kind">{say.forCoach}</p>
              <ul>
                {value.for_coach.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            </aside>
          )}
          <PaperBody paper={value} />
        </>
      )}
      <button type="button" onClick={closeAndReturn}>
        {say.close}
      </button>
    </section>
  );
}

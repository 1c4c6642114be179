import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { ClientRow } from "./client_row";
import { factsWords } from "./facts_words";
import { belongsElsewhere } from "./keys";
import { Loading } from "./loading";
import { cameFrom } from "./place";
import { PlaceLink } from "./place_link";
import { PlaceTitle } from "./place_title";
import { practiceBookWords } from "./practice_book_words";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";
import type { Caseload, CaseloadClient } from "./replies";
import { words } from "./words";
import { writingWords } from "./writing_words";

const hasNeed = (client: CaseloadClient): boolean => client.needs.some((need) => need.kind !== "nothing due");

/** Up and down go from client to client, over both lists, those that are folded away left out. */
function moveBetweenClients(event: KeyboardEvent, list: HTMLElement | null): void {
  if (belongsElsewhere(event) || (event.key !== "ArrowDown" && event.key !== "ArrowUp")) return;
  const links = Array.from(list?.querySelectorAll<HTMLElement>("a[data-client]") ?? []).filter(
    (link) => link.offsetParent !== null,
  );
  const now = links.indexOf(document.activeElement as HTMLElement);
  const next = links[event.key === "ArrowDown" ? now + 1 : Math.max(0, now - 1)];
  if (!next) return;
  event.preventDefault();
  next.focus();
  next.closest("li")?.scrollIntoView({ block: "nearest" });
}

export function WhoNeedsMe() {
  const { value, problem, again } = useReading<Caseload>("/api/caseload", null);
  const lists = useRef<HTMLDivElement>(null);
  const came = useRef(cameFrom.value);

  useEffect(() => {
    const press = (event: KeyboardEvent) => moveBetweenClients(event, lists.current);
    document.addEventListener("keydown", press);
    return () => document.removeEventListener("keydown", press);
  }, []);
  // Back from a client, the keyboard stands where it was.
  useLayoutEffect(() => {
    if (!value || !came.current) return;
    const link = lists.current?.querySelector<HTMLElement>(`a[data-client="${CSS.escape(came.current)}"]`);
    came.current = null;
    link?.closest("details")?.setAttribute("open", "");
    link?.focus();
  }, [value]);

  const needing = value?.clients.filter(hasNeed) ?? [];
  const quiet = value?.clients.filter((client) => !hasNeed(client)) ?? [];
  return (
    <>
      <PlaceTitle text={words.caseload.title} />
      {problem && <ProblemBox sentence={problem.message} again={again} />}
      {!value && !problem && <Loading text={words.loading} />}
      {value && value.clients.length === 0 && (
        <section class="empty">
          <p>{words.caseload.empty}</p>
        </section>
      )}
      {value && (
        <p class="actions">
          <PlaceLink to={{ at: "new-client" }}>{factsWords.newClient.link}</PlaceLink>
          <PlaceLink to={{ at: "writing" }}>{writingWords.link}</PlaceLink>
          <PlaceLink to={{ at: "practice-book" }}>{practiceBookWords.link}</PlaceLink>
        </p>
      )}
      {value && value.clients.length > 0 && (
        <div ref={lists}>
          <p class="lead-line">{words.caseload.need(needing.length, value.clients.length)}</p>
          <p class="hint">
            {words.caseload.stripHint} {words.caseload.keysHint}
          </p>
          <ol class="clients">
            {needing.map((client) => (
              <ClientRow key={client.handle} client={client} />
            ))}
          </ol>
          {quiet.length > 0 && (
            <details class="nothing-due">
              <summary>{words.caseload.nothingDue(quiet.length)}</summary>
              <ol class="clients">
                {quiet.map((client) => (
                  <ClientRow key={client.handle} client={client} />
                ))}
              </ol>
            </details>
          )}
        </div>
      )}
    </>
  );
}

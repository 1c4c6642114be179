import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { ClientDays } from "./client_days";
import { clientViewWords } from "./client_view_words";
import { Loading } from "./loading";
import { PaperBody } from "./paper_body";
import type { Paper, Papers } from "./paper_replies";
import type { Place } from "./place";
import { PlaceTitle } from "./place_title";
import type { AgreedChange, Plan } from "./plan_replies";
import { useReading } from "./reading";
import type { Trials } from "./trial_replies";

const say = clientViewWords;

function Agreed({ change }: { change: AgreedChange }) {
  const parts: [string, string][] = [
    [say.when, change.when],
    [say.where, change.where],
    [say.often, change.how_often],
    [say.ifNot, change.if_not],
  ];
  return (
    <section>
      <h2>{say.agreed}</h2>
      <p class="clients-words">“{change.words}”</p>
      <dl class="parts">
        {parts
          .filter(([, text]) => text)
          .map(([name, text]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{text}</dd>
            </div>
          ))}
      </dl>
    </section>
  );
}

/** An explaining page, opened when it is asked for; what the data can't draw is not shown to the client. */
function Page({ client, paper, title }: { client: string; paper: string; title: string }) {
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {open && <OpenPage client={client} paper={paper} />}
    </details>
  );
}

function OpenPage({ client, paper }: { client: string; paper: string }) {
  const { value, problem } = useReading<Paper>(ofClient(client, `/papers/${paper}`), client);
  if (!value && problem) return <p>{say.none}</p>;
  if (!value) return <Loading text={say.loading} />;
  return <PaperBody paper={value} forClient />;
}

/**
 * What the client sees when the screen is turned: their own page with what safety rule 12 leaves on it, led by a very
 * low; the days at which it was turned; what was agreed, today's part of a trial, and pages that explain. No other
 * client, no note, no finding in the coach's terms.
 */
export function ClientView({ client, here }: { client: string; here: Place }) {
  const handout = useReading<Paper>(ofClient(client, "/papers/handout"), client);
  const plan = useReading<Plan>(ofClient(client, "/plan"), client).value;
  const trials = useReading<Trials>(ofClient(client, "/trials"), client).value;
  const papers = useReading<Papers>(ofClient(client, "/papers"), client).value;
  const today = trials?.kept.find((kept) => kept.today !== null)?.today;
  if (!handout.value && !handout.problem) return <Loading text={say.loading} />;
  return (
    <article class="review client-view">
      <PlaceTitle text={handout.value?.title ?? say.agreed} />
      {handout.value ? <PaperBody paper={handout.value} forClient /> : <p class="empty">{say.none}</p>}
      {papers && <ClientDays client={client} here={here} fewerNumbers={papers.fewer_numbers} />}
      {plan?.agreed && <Agreed change={plan.agreed} />}
      {today && (
        <section>
          <h2>{say.trial}</h2>
          <p class="clients-words">{say.today(today)}</p>
        </section>
      )}
      {papers && handout.value && (
        <section>
          <h2>{say.more}</h2>
          {papers.explaining.map(({ paper, title }) => (
            <Page key={paper} client={client} paper={paper} title={title} />
          ))}
        </section>
      )}
    </article>
  );
}

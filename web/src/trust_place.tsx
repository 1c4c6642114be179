import { ofClient } from "./ask_server";
import { useClientName } from "./client_name";
import { ClientPlaces } from "./client_places";
import { DataTableBox } from "./data_table_box";
import { Loading } from "./loading";
import { MarkForm } from "./mark_form";
import { MarkedStretches } from "./marked_stretches";
import { NoReadings } from "./no_readings";
import { PlaceTitle } from "./place_title";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";
import { SensorsAtOnce } from "./sensors_at_once";
import type { Trust } from "./trust_replies";
import { trustWords as texts } from "./trust_words";

/** How far the last wear can be trusted; stretches marked and unmarked, both answers told. */
export function TrustPlace({ client }: { client: string }) {
  const { value: trust, problem, again } = useReading<Trust>(ofClient(client, "/trust"), client);
  const name = useClientName(client);
  if (!trust && problem?.code === "no_readings") return <NoReadings client={client} name={name} />;
  if (!trust && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!trust) return <Loading text={texts.loading} />;
  return (
    <article class="review trust">
      <ClientPlaces client={client} />
      <PlaceTitle text={texts.of(name)} />
      <p class="age">{trust.last_reading}</p>
      {problem && <p class="wrong">{problem.message}</p>}
      <p class="lead-line">{trust.sentence}</p>
      <ul>
        {trust.caveats.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <h2>{texts.needs}</h2>
      <ul class="plain-list">
        {trust.needs.map(({ enough, sentence }) => (
          <li key={sentence}>
            <b>{enough ? texts.enough : texts.notEnough}:</b> {sentence}
          </li>
        ))}
      </ul>
      <SensorsAtOnce client={client} overlaps={trust.at_once} agreement={trust.agreement} again={again} />
      <MarkedStretches client={client} stretches={trust.stretches} again={again} />
      <h2>{texts.answers.title}</h2>
      <DataTableBox
        name={texts.answers.title}
        headed
        table={{
          columns: [texts.answers.what, texts.answers.withAll, texts.answers.without],
          rows: trust.answers.map(({ code, with_all, without_marked }) => [texts.answers.of[code] ?? code, with_all, without_marked]),
        }}
      />
      <MarkForm client={client} again={again} />
    </article>
  );
}

import { ofClient } from "./ask_server";
import { useClientName } from "./client_name";
import { ClientPlaces } from "./client_places";
import { DataTableBox } from "./data_table_box";
import { FindingBox } from "./finding_box";
import { LastReadingLine } from "./last_reading_line";
import { Loading } from "./loading";
import { PlaceLink } from "./place_link";
import { PlaceTitle } from "./place_title";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";
import type { Sensor } from "./sensor_replies";
import { sensorWords as say } from "./sensor_words";
import { TellWear } from "./tell_wear";

/** What was bought, used and is left; a link to where it is told. */
function Supplies({ client, supplies }: { client: string; supplies: Sensor["supplies"] }) {
  const row = (name: string, { bought, used, left }: Sensor["supplies"]["sensors"]) => [name, String(bought), String(used), String(left)];
  return (
    <section>
      <h2>{say.supplies}</h2>
      <DataTableBox
        name={say.supplyTable}
        table={{ columns: say.supplyColumns, rows: [row(say.sensors, supplies.sensors), row(say.sessions, supplies.sessions)] }}
      />
      <p>
        <PlaceLink to={{ at: "facts", client }}>{say.change}</PlaceLink>
      </p>
    </section>
  );
}

/** How long the sensors last and why they end, how far they read from finger-pricks, what is left of them. */
export function SensorPlace({ client }: { client: string }) {
  const { value: sensor, problem, again } = useReading<Sensor>(ofClient(client, "/sensor"), client);
  const name = useClientName(client);
  if (!sensor && problem?.code === "no_readings") {
    return (
      <article class="review">
        <ClientPlaces client={client} />
        <PlaceTitle text={say.of(name)} />
        <LastReadingLine last={null} />
        <p class="empty">{say.noReadings}</p>
      </article>
    );
  }
  if (!sensor && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!sensor) return <Loading text={say.loading} />;
  const zones = sensor.accuracy.zones_a_to_e.map((pairs, at) => ["ABCDE"[at] ?? "", String(pairs)]);
  return (
    <article class="review">
      <ClientPlaces client={client} />
      <PlaceTitle text={say.of(name)} />
      <LastReadingLine last={sensor.last_reading} />
      {problem && <p class="wrong">{problem.message}</p>}
      {sensor.findings.map((finding) => (
        <FindingBox key={finding.code} finding={finding} />
      ))}
      {sensor.accuracy.pairs > 0 && (
        <details>
          <summary>{say.annex}</summary>
          <p class="hint">{say.annexNote}</p>
          <DataTableBox name={say.annex} table={{ columns: say.annexColumns, rows: zones }} />
        </details>
      )}
      <h2>{say.wears}</h2>
      <DataTableBox
        name={say.wearTable}
        table={{ columns: say.wearColumns, rows: sensor.wears.map((wear) => [wear.label, wear.from_words, wear.lasted_words, wear.end, say.overpatch(wear.overpatch), wear.site]) }}
      />
      <TellWear client={client} wears={sensor.wears} again={again} />
      <Supplies client={client} supplies={sensor.supplies} />
    </article>
  );
}

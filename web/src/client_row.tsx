import { PlaceLink } from "./place_link";
import type { CaseloadClient, Need } from "./replies";
import { SeenStrip } from "./seen_strip";
import { words } from "./words";

function Reason({ need }: { need: Need }) {
  return (
    <div class={need.kind === "unsafe" ? "reason unsafe" : "reason"}>
      {need.kind !== "nothing due" && <p class="kind">{words.caseload.reason[need.kind]}</p>}
      <p>{need.why}</p>
      {need.next && (
        <p class="next">
          <b>{words.caseload.next}</b> {need.next}
        </p>
      )}
    </div>
  );
}

/** A client, why they need the coach, and the one next action. */
export function ClientRow({ client }: { client: CaseloadClient }) {
  const [first, ...others] = client.needs;
  return (
    <li class="client-row" data-client={client.handle}>
      <h2>
        <PlaceLink to={{ at: "review", client: client.handle }} data-client={client.handle}>
          {client.name}
        </PlaceLink>
      </h2>
      <SeenStrip seen={client.seen} written={client.written} />
      <div class="reasons">
        {first && <Reason need={first} />}
        {others.length > 0 && (
          <details>
            <summary>{words.caseload.more(others.length)}</summary>
            {others.map((need, at) => (
              <Reason key={at} need={need} />
            ))}
          </details>
        )}
      </div>
    </li>
  );
}

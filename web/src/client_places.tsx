import { PlaceLink } from "./place_link";
import { place, type Place } from "./place";
import { words } from "./words";

/** A client's places in the order of the coach's questions: a place more is one line. */
const placesOf = (client: string): [Place, string][] => [
  [{ at: "review", client }, words.places.review],
  [{ at: "facts", client }, words.places.facts],
  [{ at: "trust", client }, words.places.trust],
  [{ at: "diary", client, date: "today" }, words.places.diary],
  [{ at: "goes-with", client }, words.places.goesWith],
  [{ at: "plan", client }, words.places.plan],
  [{ at: "helped", client }, words.places.helped],
  [{ at: "sensor", client }, words.places.sensor],
  [{ at: "bring-in", client }, words.places.bringIn],
  [{ at: "shares", client }, words.places.shares],
];

/** The line of links at the top of a client's places; where one is, it says so. */
export function ClientPlaces({ client }: { client: string }) {
  const here = place.value;
  return (
    <nav class="client-places" aria-label={words.places.title}>
      <ul>
        {placesOf(client).map(([to, name]) => (
          <li key={name}>
            {to.at === here.at ? <b aria-current="page">{name}</b> : <PlaceLink to={to}>{name}</PlaceLink>}
          </li>
        ))}
      </ul>
    </nav>
  );
}

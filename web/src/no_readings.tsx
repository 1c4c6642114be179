import { ClientPlaces } from "./client_places";
import { Escalations } from "./escalations";
import { PlaceLink } from "./place_link";
import { PlaceTitle } from "./place_title";
import { words } from "./words";

/** A client of whom nothing was brought in yet, and what comes next. */
export function NoReadings({ client, name }: { client: string; name: string }) {
  return (
    <article class="review">
      <ClientPlaces client={client} />
      <PlaceTitle text={words.review.of(name)} />
      <Escalations client={client} />
      <section class="empty">
        <p>{words.day.noReading}</p>
        <p>
          <PlaceLink to={{ at: "bring-in", client }}>{words.review.bringIn}</PlaceLink>
        </p>
      </section>
    </article>
  );
}

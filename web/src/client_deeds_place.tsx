import { ClientAge } from "./client_age";
import { useClientName } from "./client_name";
import { ClientPlaces } from "./client_places";
import { DeedList } from "./deed_list";
import { PlaceTitle } from "./place_title";
import { practiceBookWords } from "./practice_book_words";

/** Who in the practice did and saw what of one client. */
export function ClientDeedsPlace({ client }: { client: string }) {
  const name = useClientName(client);
  return (
    <article class="review practice-book">
      <ClientPlaces client={client} />
      <PlaceTitle text={practiceBookWords.deeds.of(name)} />
      <ClientAge client={client} />
      <DeedList client={client} />
    </article>
  );
}

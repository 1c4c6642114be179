import { PlaceLink } from "./place_link";
import type { Deed } from "./practice_book_replies";
import { practiceBookWords } from "./practice_book_words";

/** One line of who did what; the client is left out where all lines are about the same one. */
export function DeedLine({ deed, withClient }: { deed: Deed; withClient: boolean }) {
  const { label, coach, words, client, other_coach } = deed;
  return (
    <li>
      <span class="when">{label}</span>
      <span>
        {coach?.name ?? practiceBookWords.deeds.someone} {words}
        {other_coach && `: ${other_coach.name}`}
        {withClient && client && (
          <>
            : <PlaceLink to={{ at: "review", client: client.handle }}>{client.name}</PlaceLink>
          </>
        )}
      </span>
    </li>
  );
}

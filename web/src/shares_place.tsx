import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { ClientAge } from "./client_age";
import { useClientName } from "./client_name";
import { ClientPlaces } from "./client_places";
import { Loading } from "./loading";
import { PlaceLink } from "./place_link";
import { PlaceTitle } from "./place_title";
import { practiceBookWords } from "./practice_book_words";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";
import { ShareAddress } from "./share_address";
import { ShareForm } from "./share_form";
import { ShareList } from "./share_list";
import type { ShareGiven, Shares } from "./shares_replies";
import { sharesWords as texts } from "./shares_words";

/** To whom the client's data are shown, until when, and who looked. */
export function SharesPlace({ client }: { client: string }) {
  const { value, problem, again } = useReading<Shares>(ofClient(client, "/shares"), client);
  const [given, setGiven] = useState<ShareGiven | null>(null);
  const name = useClientName(client);
  if (!value && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!value) return <Loading text={texts.loading} />;
  return (
    <article class="review shares">
      <ClientPlaces client={client} />
      <PlaceTitle text={texts.of(name)} />
      <ClientAge client={client} />
      {problem && <p class="wrong">{problem.message}</p>}
      <p>{texts.lead}</p>
      {!value.consent_holds && <p class="wrong">{texts.noConsent}</p>}
      {value.closed_kinds.length > 0 && <p>{texts.closedKinds(value.closed_kinds.join(", "))}</p>}
      {given && <ShareAddress given={given} close={() => setGiven(null)} />}
      <ShareList client={client} shares={value.shares} again={again} />
      <p>
        <PlaceLink to={{ at: "who-did-what", client }}>{practiceBookWords.deeds.linkOfClient}</PlaceLink>
      </p>
      <ShareForm
        client={client}
        known={value}
        given={(one) => {
          setGiven(one);
          again();
        }}
      />
    </article>
  );
}

import { ofClient } from "./ask_server";
import { CareBox } from "./care_box";
import { ClientAge } from "./client_age";
import { ClientPlaces } from "./client_places";
import { FactList } from "./fact_list";
import { FactSection } from "./fact_section";
import { useFactKeeping } from "./fact_keeping";
import * as form from "./facts_form";
import type { ClientWithFacts, Facts } from "./facts_replies";
import { factsWords as texts } from "./facts_words";
import { LeaveBox } from "./leave_box";
import { Loading } from "./loading";
import { PlaceTitle } from "./place_title";
import { ProblemBox } from "./problem_box";
import { useReading } from "./reading";

/** What stands in a section: when it changes elsewhere, the section is drawn anew; others keep what is being written. */
const own = (facts: Facts, paths: string[]): string => JSON.stringify(paths.map((path) => form.factAt(facts, path)));
const ofSection = (facts: Facts, section: form.Section) => own(facts, section.fields.map(({ path }) => path));

/** All that is known of a client besides readings and diary, in any order. */
export function FactsPlace({ client }: { client: string }) {
  const { value, problem, again } = useReading<ClientWithFacts>(ofClient(client), client);
  const keeping = useFactKeeping(value, again);
  if (!value && problem) return <ProblemBox sentence={problem.message} again={again} />;
  if (!value) return <Loading text={texts.loading} />;
  const { facts, care } = value;
  const section = (one: form.Section) => (
    <FactSection key={one.title + ofSection(facts, one)} section={one} facts={facts} keeping={keeping} />
  );
  const list = (one: form.ListSection) => (
    <FactList key={one.title + own(facts, [one.path])} section={one} facts={facts} keeping={keeping} />
  );
  return (
    <article class="client-facts">
      <ClientPlaces client={client} />
      <PlaceTitle text={texts.of(value.name)} />
      <ClientAge client={client} />
      <p>{texts.lead}</p>
      {problem && <p class="wrong">{problem.message}</p>}
      {section(form.why)}
      {list(form.contacts)}
      <FactList
        key={own(facts, ["medicines"])}
        section={form.medicines}
        facts={facts}
        keeping={keeping}
        told={(line) => care.medicines[line]}
      >
        <p class={care.medicines_asked_on ? "quiet" : "wrong"}>
          {care.medicines_asked_on ? texts.askedOn(care.medicines_asked_on) : texts.notAsked}
        </p>
        {care.to_ask.map((sentence) => (
          <p class="wrong" key={sentence}>
            {sentence}
          </p>
        ))}
        {care.medicines.length === 0 && (
          <button
            type="button"
            onClick={() => void keeping.keep(form.medicines.title, { medicines: [{ written: "none", from: null, until: null }] })}
          >
            {texts.takesNone}
          </button>
        )}
      </FactList>
      {section(form.careful)}
      {section(form.eating)}
      {section(form.goals)}
      {section(form.consent)}
      <FactSection key={ofSection(facts, form.supplies)} section={form.supplies} facts={facts} keeping={keeping}>
        <p class="quiet">
          {["sessions", "sensors"].map((what) => (
            <span key={what}>
              {what}: {texts.left(Number(form.factAt(facts, `${what}.bought`)), Number(form.factAt(facts, `${what}.used`)))}{" "}
            </span>
          ))}
        </p>
      </FactSection>
      {section(form.person)}
      {list(form.clock)}
      {list(form.labs)}
      {list(form.prescriberAnswers)}
      <CareBox care={care} />
      <LeaveBox client={client} />
    </article>
  );
}

import { useLayoutEffect, useRef } from "preact/hooks";
import { Bottom } from "./bottom";
import { BringInPlace } from "./bring_in_place";
import { CausesPlace } from "./causes_place";
import { ClientView } from "./client_view";
import { ClientDeedsPlace } from "./client_deeds_place";
import { clientViewWords } from "./client_view_words";
import { DayPlace } from "./day_place";
import { DiaryPlace } from "./diary_place";
import { FactsPlace } from "./facts_place";
import { HelpedPlace } from "./helped_place";
import { KeyPresses } from "./key_presses";
import { Loading } from "./loading";
import { NewClientPlace } from "./new_client_place";
import { place } from "./place";
import { PlanPlace } from "./plan_place";
import { PracticeBookPlace } from "./practice_book_place";
import { ProblemBox } from "./problem_box";
import { ReviewPlace } from "./review_place";
import { endedFor, findSession, session, sessionProblem } from "./session";
import { SensorPlace } from "./sensor_place";
import { SharesPlace } from "./shares_place";
import { SignIn } from "./sign_in";
import { TopBar } from "./top_bar";
import { TracePlace } from "./trace_place";
import { TrustPlace } from "./trust_place";
import { turned } from "./turned_screen";
import { WhoNeedsMe } from "./who_needs_me";
import { WordsPanel } from "./words_panel";
import { words } from "./words";
import { WritingPlace } from "./writing_place";

/** The place that the address names. */
function Content() {
  const here = place.value;
  if (turned.value) {
    // Going back in the window leads to no list of others either.
    return "client" in here ? <ClientView key={here.client} client={here.client} here={here} /> : <p class="empty">{clientViewWords.none}</p>;
  }
  switch (here.at) {
    case "caseload":
      return <WhoNeedsMe />;
    case "review":
      return <ReviewPlace key={here.client} client={here.client} />;
    case "day":
      return <DayPlace key={here.client + here.date} client={here.client} date={here.date} />;
    case "trace":
      return <TracePlace key={`${here.client} 14`} client={here.client} days={14} />;
    case "ninety-days":
      return <TracePlace key={`${here.client} 90`} client={here.client} days={90} />;
    case "bring-in":
      return <BringInPlace key={here.client} client={here.client} />;
    case "diary":
      return <DiaryPlace key={here.client} client={here.client} date={here.date} />;
    case "facts":
      return <FactsPlace key={here.client} client={here.client} />;
    case "trust":
      return <TrustPlace key={here.client} client={here.client} />;
    case "shares":
      return <SharesPlace key={here.client} client={here.client} />;
    case "who-did-what":
      return <ClientDeedsPlace key={here.client} client={here.client} />;
    case "practice-book":
      return <PracticeBookPlace />;
    case "new-client":
      return <NewClientPlace />;
    case "writing":
      return <WritingPlace />;
    case "plan":
      return <PlanPlace key={here.client} client={here.client} />;
    case "helped":
      return <HelpedPlace key={here.client} client={here.client} />;
    case "sensor":
      return <SensorPlace key={here.client} client={here.client} />;
    case "goes-with":
      return <CausesPlace key={here.client} client={here.client} />;
    case "nowhere":
      return <ProblemBox sentence={words.problem.notFound} />;
  }
}

/** All that a coach sees when signed in. Out of sight once the session has ended by itself, so that nothing half-written is lost. */
function Workbench() {
  const here = session.value !== null;
  const whole = useRef<HTMLDivElement>(null);
  const away = useRef(false);
  const stood = useRef<Element | null>(null);
  // The browser takes the keyboard from what is out of sight: signed in again, it stands where it was.
  if (!here && whole.current?.contains(document.activeElement)) stood.current = document.activeElement;
  useLayoutEffect(() => {
    const to = stood.current?.isConnected ? stood.current : whole.current?.querySelector("h1");
    if (here && away.current && to instanceof HTMLElement) to.focus();
    away.current = !here;
  }, [here]);
  return (
    <div ref={whole} hidden={!here}>
      <a class="skip" href="#content">
        {words.skip}
      </a>
      <TopBar />
      <main id="content" tabIndex={-1}>
        <Content />
      </main>
      <Bottom />
      <WordsPanel />
      {here && <KeyPresses />}
    </div>
  );
}

export function App() {
  if (sessionProblem.value) {
    return (
      <main class="sign-in">
        <ProblemBox sentence={sessionProblem.value.message} again={() => void findSession()} />
      </main>
    );
  }
  if (session.value === undefined) {
    return (
      <main class="sign-in">
        <Loading text={words.loading} />
      </main>
    );
  }
  const whose = session.value ?? endedFor.value;
  return (
    <>
      {session.value === null && <SignIn />}
      {whose && <Workbench key={whose.coach} />}
    </>
  );
}

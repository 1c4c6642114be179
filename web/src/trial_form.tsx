import { useEffect, useRef, useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { causesWords } from "./causes_words";
import { useTaken } from "./given_back";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { Loading } from "./loading";
import { useReading } from "./reading";
import type { TrialPlan } from "./trial_replies";
import { words } from "./words";

const say = causesWords.trials;

interface Props {
  client: string;
  question: string;
  today: string;
  done: () => void;
  cancel: () => void;
}

/** How many pairs, from when, and what that can show; the order is drawn only when the trial is kept. */
export function TrialForm({ client, question, today, done, cancel }: Props) {
  const first = useTaken<HTMLInputElement>(true);
  const [pairs, setPairs] = useState("");
  const [starts, setStarts] = useState("");
  const [draw, setDraw] = useState("coins");
  const wish = { question, pairs, draw, starts };
  const asked = new URLSearchParams(wish).toString();
  const { value: plan, problem } = useReading<TrialPlan>(ofClient(client, `/trial-plan?${asked}`), client);
  const { busy, told, wrong, keep } = useKeeping();
  const keepIt = async () => {
    if (plan?.can_be_drawn && (await keep(ofClient(client, "/trials"), wish, say.keptNow))) done();
  };
  // Pressed while it is still read what this wish can show: kept once that is there and nothing speaks against it.
  const pressed = useRef("");
  const submit = (event: Event) => {
    event.preventDefault();
    pressed.current = plan ? "" : asked;
    void keepIt();
  };
  useEffect(() => {
    if (plan && pressed.current === asked) void keepIt();
    pressed.current = "";
  }, [plan]);
  return (
    <form class="agree" onSubmit={submit}>
      <div class="two-fields">
        <p>
          <label for="trial-pairs">{say.pairs}</label>
          <input ref={first} id="trial-pairs" inputMode="numeric" pattern="[0-9]*" value={pairs} aria-describedby="trial-pairs-hint" onInput={(event) => setPairs(event.currentTarget.value)} />
          <span class="hint" id="trial-pairs-hint">
            {say.pairsHint}
          </span>
        </p>
        <p>
          <label for="trial-starts">{say.starts}</label>
          <input id="trial-starts" type="date" min={today} value={starts} aria-describedby="trial-starts-hint" onChange={(event) => setStarts(event.currentTarget.value)} />
          <span class="hint" id="trial-starts-hint">
            {say.startsHint}
          </span>
        </p>
      </div>
      <label for="trial-draw">{say.draw}</label>
      <select id="trial-draw" value={draw} onChange={(event) => setDraw(event.currentTarget.value)}>
        <option value="coins">{say.coins}</option>
        <option value="balanced">{say.balanced}</option>
      </select>
      <div role="status" class="trial-says">
        {!plan && !problem && <Loading text={say.loading} />}
        {problem && <p class="wrong">{problem.message}</p>}
        {plan?.gates.map((gate) => (
          <p key={gate}>{gate}</p>
        ))}
        {plan?.refused_because && <p class="wrong">{plan.refused_because}</p>}
        {plan && !plan.refused_because && (
          <>
            {plan.sentences.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
            {plan.pairs !== null && plan.days !== null && <p class="sentence">{say.would(plan.pairs, plan.days)}</p>}
          </>
        )}
      </div>
      <p class="hint">{say.drawNote}</p>
      <button type="submit" class="main" aria-disabled={busy || !plan?.can_be_drawn}>
        {say.keep}
      </button>{" "}
      <button type="button" class="plain" onClick={cancel}>
        {words.cancel}
      </button>
      <KeptLine told={told} wrong={wrong} />
    </form>
  );
}

import { useState } from "preact/hooks";
import { causesWords } from "./causes_words";
import { useGivenBack } from "./given_back";
import { TrialForm } from "./trial_form";
import type { TrialTemplate } from "./trial_replies";

const say = causesWords.trials;

interface Props {
  client: string;
  template: TrialTemplate;
  today: string;
  /** No other trial goes on, and there are readings to plan it from. */
  may: boolean;
  done: () => void;
}

/** A trial that may be tried: its question and arms, and the form that plans it. */
export function TrialOffered({ client, template, today, may, done }: Props) {
  const [plans, setPlans] = useState(false);
  const opener = useGivenBack(plans);
  return (
    <li>
      <h4>{template.question}</h4>
      <p>{say.arms(template.a, template.b)}</p>
      <p class="quiet">{say.read(template.read, template.keep_alike)}</p>
      {may && !plans && (
        <button ref={opener} type="button" aria-label={`${say.plan}: ${template.question}`} onClick={() => setPlans(true)}>
          {say.plan}
        </button>
      )}
      {may && plans && (
        <TrialForm
          client={client}
          question={template.code}
          today={today}
          done={() => {
            setPlans(false);
            done();
          }}
          cancel={() => setPlans(false)}
        />
      )}
    </li>
  );
}

import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { useGivenBack } from "./given_back";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import type { Candidate, Plan } from "./plan_replies";
import { planWords } from "./plan_words";
import { words } from "./words";

const say = planWords.agree;

interface FieldProps {
  name: string;
  label: string;
  hint?: string;
  required?: boolean;
  /** A day not before this one, instead of a text. */
  dayFrom?: string;
}

function Field({ name, label, hint, required = false, dayFrom }: FieldProps) {
  const id = `agree-${name}`;
  const described = hint ? { "aria-describedby": `${id}-hint` } : {};
  return (
    <>
      <label for={id}>{label}</label>
      {dayFrom === undefined ? (
        <input id={id} name={name} required={required} maxLength={500} {...described} />
      ) : (
        <input id={id} name={name} type="date" min={dayFrom} required={required} {...described} />
      )}
      {hint && (
        <p class="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </>
  );
}

function Choice({ name, label, answers }: { name: string; label: string; answers: Record<string, string> }) {
  const id = `agree-${name}`;
  return (
    <>
      <label for={id}>{label}</label>
      <select id={id} name={name} required>
        <option value="">{say.chooseKind}</option>
        {Object.entries(answers).map(([answer, text]) => (
          <option key={answer} value={answer}>
            {text}
          </option>
        ))}
      </select>
    </>
  );
}

const yesOrNo = { no: say.no, yes: say.yes };

/** What a change in the coach's own words does: nothing else tells which gates it has to pass. */
function WhatItDoes() {
  return (
    <>
      <Choice name="eating" label={say.eating} answers={say.eatings} />
      <Choice name="moves" label={say.moves} answers={yesOrNo} />
      <Choice name="medicine" label={say.medicine} answers={yesOrNo} />
    </>
  );
}

/** A change is agreed whole: what, when, where, how often, what if not, how checked, when stopped. */
export function AgreeForm({ client, plan, candidate, done }: { client: string; plan: Plan; candidate: Candidate | null; done: () => void }) {
  const { busy, told, wrong, keep } = useKeeping();
  const form = useRef<HTMLFormElement>(null);
  const [kind, setKind] = useState("");
  useLayoutEffect(() => form.current?.querySelector("input")?.focus(), []);
  const planned = plan.ranked[0] === candidate && plan.check ? plan.check : null;

  const submit = async (event: Event) => {
    event.preventDefault();
    const typed = new FormData(event.currentTarget as HTMLFormElement);
    const text = (name: string) => String(typed.get(name) ?? "").trim();
    const body = {
      words: text("words"),
      candidate: candidate?.code ?? "",
      kind: candidate ? "" : text("kind"),
      eating: text("eating"),
      moves: text("moves"),
      medicine: text("medicine"),
      with_prescriber: typed.get("with_prescriber") ? "yes" : "no",
      when: text("when"),
      where: text("where"),
      how_often: text("how_often"),
      if_not: text("if_not"),
      how_checked: text("how_checked"),
      check_on: text("check_on"),
      stop_when: text("stop_when"),
    };
    if (await keep(ofClient(client, "/plan/agree"), body, say.told)) done();
  };

  return (
    <form ref={form} class="agree" onSubmit={(event) => void submit(event)}>
      <h4>{say.title(candidate?.words ?? planWords.agree.kinds.other)}</h4>
      <p class="hint">{say.one}</p>
      <Field name="words" label={say.words} required />
      {!candidate && (
        <>
          <label for="agree-kind">{say.kind}</label>
          <select id="agree-kind" name="kind" required onChange={(event) => setKind(event.currentTarget.value)}>
            <option value="">{say.chooseKind}</option>
            {Object.entries(say.kinds).map(([kind, text]) => (
              <option key={kind} value={kind}>
                {text}
              </option>
            ))}
          </select>
          {(kind === "other" || kind === "food-change") && <WhatItDoes />}
          <label class="choice">
            <input type="checkbox" name="with_prescriber" /> {say.withPrescriber}
          </label>
        </>
      )}
      <Field name="when" label={say.when} required />
      <Field name="where" label={say.where} required />
      <Field name="how_often" label={say.howOften} required />
      <Field name="if_not" label={say.ifNot} required />
      <Field name="how_checked" label={say.howChecked} required={!candidate} {...(candidate ? { hint: `${say.howCheckedHint}${planned ? ` ${planned.words}` : ""}` } : {})} />
      <Field name="check_on" label={say.checkOn} hint={say.checkOnHint} dayFrom={plan.today} />
      <Field name="stop_when" label={say.stopWhen} required />
      <p class="actions">
        <button type="submit" class="main" aria-disabled={busy}>
          {say.keep}
        </button>
        <button type="button" class="plain" onClick={done}>
          {words.cancel}
        </button>
      </p>
      <KeptLine told={told} wrong={wrong} />
    </form>
  );
}

/** What no candidate names, with its kind so that its gates are asked. */
export function AgreeOther({ client, plan }: { client: string; plan: Plan }) {
  const [open, setOpen] = useState(false);
  const opener = useGivenBack(open);
  return open ? (
    <AgreeForm client={client} plan={plan} candidate={null} done={() => setOpen(false)} />
  ) : (
    <p class="actions">
      <button ref={opener} type="button" onClick={() => setOpen(true)}>
        {say.other}
      </button>
    </p>
  );
}

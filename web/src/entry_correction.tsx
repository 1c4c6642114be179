import { useId, useLayoutEffect, useRef } from "preact/hooks";
import type { EntryForm } from "./diary_replies";
import { diaryWords } from "./diary_words";

const texts = diaryWords.entries;

interface Props {
  form: EntryForm;
  keep: (form: EntryForm) => void;
  cancel: () => void;
}

const order: (keyof EntryForm)[] = ["time", "text", "carbohydrate_g", "kind", "date"];

/** An entry's parts to be corrected; the keyboard stands in the first, Escape leaves all as it is. */
export function EntryCorrection({ form, keep, cancel }: Props) {
  const id = useId();
  const first = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => first.current?.querySelector<HTMLElement>("input")?.focus(), []);
  const submit = (event: Event) => {
    event.preventDefault();
    const told = new FormData(event.currentTarget as HTMLFormElement);
    keep(Object.fromEntries(order.map((name) => [name, String(told.get(name) ?? "").trim()])) as unknown as EntryForm);
  };
  return (
    <form
      class="correction"
      onSubmit={submit}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        cancel();
      }}
    >
      <div class="fact-grid" ref={first}>
        {order.map((name) => (
          <div class="fact" key={name}>
            <label for={id + name}>{texts.fields[name]}</label>
            {name === "kind" ? (
              <select id={id + name} name={name}>
                {Object.entries(diaryWords.kinds).map(([kind, told]) => (
                  <option key={kind} value={kind} selected={kind === form.kind}>
                    {told}
                  </option>
                ))}
              </select>
            ) : (
              <input id={id + name} name={name} type={(name === "date" ? "date" : "text") as "text"} defaultValue={form[name]} autocomplete="off" />
            )}
          </div>
        ))}
      </div>
      <p class="actions">
        <button type="submit">{texts.keep}</button>
        <button type="button" onClick={cancel}>
          {texts.cancel}
        </button>
      </p>
    </form>
  );
}

import type { ComponentChildren } from "preact";
import { useId, useState } from "preact/hooks";
import { FactField } from "./fact_field";
import { changeAt, factAt, factOf, written, type Section } from "./facts_form";
import type { Facts } from "./facts_replies";
import { factsWords as texts } from "./facts_words";
import { KeptLine } from "./kept_line";
import type { FactKeeping } from "./fact_keeping";

interface Props {
  section: Section;
  facts: Facts;
  keeping: FactKeeping;
  children?: ComponentChildren;
}

/** A section of single facts, kept by one button; others stay as they are. */
export function FactSection({ section, facts, keeping, children }: Props) {
  const id = useId();
  const [chosen, setChosen] = useState<Record<string, string>>({});
  const known = (path: string): string => written(factAt(facts, path));
  const asked = section.fields.filter(({ onlyWith }) => !onlyWith || (chosen[onlyWith.path] ?? known(onlyWith.path)) === onlyWith.value);
  const decides = (path: string): boolean => section.fields.some(({ onlyWith }) => onlyWith?.path === path);
  const submit = (event: Event) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const changes: Facts = {};
    for (const field of section.fields) changeAt(changes, field.path, factOf(field.kind, String(form.get(field.path) ?? "")));
    void keeping.keep(section.title, changes);
  };
  return (
    <section class="facts" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{section.title}</h2>
      <form onSubmit={submit}>
        <div class="fact-grid">
          {asked.map((field) => (
            <FactField
              key={field.path}
              id={`${id}${field.path}`}
              field={field}
              value={known(field.path)}
              {...(decides(field.path) ? { onChange: (value: string) => setChosen({ ...chosen, [field.path]: value }) } : {})}
            />
          ))}
        </div>
        {children}
        <button type="submit" aria-label={`${texts.keep}: ${section.title}`}>
          {texts.keep}
        </button>
        {keeping.told(section.title) && <KeptLine {...keeping.told(section.title)!} />}
      </form>
    </section>
  );
}

import type { ComponentChildren } from "preact";
import { useId, useState } from "preact/hooks";
import { FactField } from "./fact_field";
import type { FactKeeping } from "./fact_keeping";
import { factAt, factOf, written, type ListSection } from "./facts_form";
import type { Facts } from "./facts_replies";
import { factsWords as texts } from "./facts_words";
import { KeptLine } from "./kept_line";

interface Line {
  key: number;
  values: Record<string, string>;
}

interface Props {
  section: ListSection;
  facts: Facts;
  keeping: FactKeeping;
  /** What is told of the line of that number. */
  told?: (line: number) => ComponentChildren;
  children?: ComponentChildren;
}

let lastKey = 0;

function linesOf(section: ListSection, facts: Facts): Line[] {
  const list = factAt(facts, section.path);
  return (Array.isArray(list) ? list : []).map((one) => ({
    key: ++lastKey,
    values: Object.fromEntries(section.columns.map(({ path }) => [path, written(factAt(one as Facts, path))])),
  }));
}

const emptyLine = (section: ListSection): Line => ({
  key: ++lastKey,
  values: Object.fromEntries(section.columns.map(({ path, kind, choices }) => [path, choices?.[0]?.[0] ?? (kind === "yes-no" ? "false" : "")])),
});

/** Nothing was written in it but what stood there from the start. */
const isEmpty = (section: ListSection, line: Line): boolean =>
  section.columns.every(({ path, kind, choices }) => choices !== undefined || kind === "yes-no" || !line.values[path]?.trim());

/** Facts that are a list of lines: added, changed, taken away, and kept whole. */
export function FactList({ section, facts, keeping, told, children }: Props) {
  const id = useId();
  const [lines, setLines] = useState(() => linesOf(section, facts));
  const submit = (event: Event) => {
    event.preventDefault();
    const list = lines
      .filter((line) => !isEmpty(section, line))
      .map((line) => Object.fromEntries(section.columns.map(({ path, kind }) => [path, factOf(kind, line.values[path] ?? "")])));
    void keeping.keep(section.title, { [section.path]: list });
  };
  return (
    <section class="facts" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{section.title}</h2>
      {children}
      <form onSubmit={submit}>
        {lines.length === 0 && <p class="quiet">{texts.none}</p>}
        {lines.map((line, at) => (
          <div class="fact-line" role="group" aria-label={`${section.title}, ${at + 1}`} key={line.key}>
            {section.columns.map((field) => (
              <FactField
                key={field.path}
                id={`${id}${line.key}${field.path}`}
                field={field}
                value={line.values[field.path] ?? ""}
                onChange={(value) => (line.values[field.path] = value)}
              />
            ))}
            <button type="button" onClick={() => setLines(lines.filter(({ key }) => key !== line.key))}>
              {texts.remove(at + 1)}
            </button>
            {told && <p class="quiet">{told(at)}</p>}
          </div>
        ))}
        <p class="actions">
          <button type="button" onClick={() => setLines([...lines, emptyLine(section)])}>
            {texts.add}
          </button>
          <button type="submit" aria-label={`${texts.keep}: ${section.title}`}>
            {texts.keep}
          </button>
        </p>
        {keeping.told(section.title) && <KeptLine {...keeping.told(section.title)!} />}
      </form>
    </section>
  );
}

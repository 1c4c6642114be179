import { useId } from "preact/hooks";
import { bringInWords } from "./bring_in_words";

const texts = bringInWords.correct;

interface Props {
  answers: Record<string, string>;
  answer: (answers: Record<string, string>) => void;
}

const choices: [string, string, string[]][] = [
  ["unit", texts.unit, ["mg/dL", "mmol/L"]],
  ["date_order", texts.dateOrder, ["day", "month", "year"]],
  ["decimal", texts.decimal, ["point", "comma"]],
];
const written: [string, string][] = [
  ["header_line", texts.headerLine],
  ["time_column", texts.timeColumn],
  ["glucose_column", texts.glucoseColumn],
  ["sheet", texts.sheet],
];

/** What the coach knows better than the guess; the file is read again by it. */
export function FileCorrections({ answers, answer }: Props) {
  const id = useId();
  const submit = (event: Event) => {
    event.preventDefault();
    const told = new FormData(event.currentTarget as HTMLFormElement);
    const said: Record<string, string> = {};
    for (const [name, value] of told) if (typeof value === "string" && value.trim()) said[name] = value.trim();
    answer(said);
  };
  return (
    <details class="corrections">
      <summary>{texts.title}</summary>
      <form onSubmit={submit}>
        <p class="hint">{texts.hint}</p>
        {choices.map(([name, label, values]) => (
          <p key={name}>
            <label for={id + name}>{label}</label>
            <select id={id + name} name={name}>
              <option value="">{texts.asFound}</option>
              {values.map((value) => (
                <option key={value} value={value} selected={answers[name] === value}>
                  {bringInWords.question.answers[value] ?? value}
                </option>
              ))}
            </select>
          </p>
        ))}
        {written.map(([name, label]) => (
          <p key={name}>
            <label for={id + name}>{label}</label>
            <input id={id + name} name={name} defaultValue={answers[name] ?? ""} inputMode={name === "header_line" ? "numeric" : "text"} />
          </p>
        ))}
        <button type="submit">{texts.again}</button>
      </form>
    </details>
  );
}

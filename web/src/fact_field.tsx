import type { Field } from "./facts_form";

interface Props {
  id: string;
  field: Field;
  value: string;
  /** Of a line in a list: heard at each change; single fields are read when they are kept. */
  onChange?: (value: string) => void;
}

const types = { text: "text", date: "date", moment: "datetime-local", number: "text", telephone: "tel" } as const;

/** One fact to be written, with its name above and a hint below. */
export function FactField({ id, field, value, onChange }: Props) {
  const hint = field.hint ? `${id}-hint` : undefined;
  const common = {
    id,
    name: field.path,
    ...(hint ? { "aria-describedby": hint } : {}),
    ...(onChange ? { onInput: (event: { currentTarget: { value: string } }) => onChange(event.currentTarget.value) } : {}),
  };
  const choices =
    field.kind === "yes-no"
      ? ([
          ["false", "no"],
          ["true", "yes"],
        ] as [string, string][])
      : field.choices;
  return (
    <div class="fact">
      <label for={id}>{field.label}</label>
      {choices ? (
        <select {...common}>
          {choices.map(([word, told]) => (
            <option key={word} value={word} selected={word === value}>
              {told}
            </option>
          ))}
        </select>
      ) : field.kind === "area" ? (
        <textarea {...common} rows={3} defaultValue={value} />
      ) : (
        <input
          {...common}
          type={types[field.kind as keyof typeof types] as "text"}
          defaultValue={value}
          {...(field.kind === "number" ? { inputMode: "decimal" as const } : {})}
        />
      )}
      {hint && (
        <p class="hint" id={hint}>
          {field.hint}
        </p>
      )}
    </div>
  );
}

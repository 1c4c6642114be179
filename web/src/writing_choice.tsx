interface Props {
  name: string;
  title: string;
  hint?: string;
  /** Value and words of each. */
  choices: [string, string][];
  chosen: string;
  choose: (value: string) => void;
}

/** One of a few ways; choosing keeps it. */
export function WritingChoice({ name, title, hint, choices, chosen, choose }: Props) {
  return (
    <fieldset aria-describedby={hint && `${name}-hint`}>
      <legend>{title}</legend>
      {hint && (
        <p class="hint" id={`${name}-hint`}>
          {hint}
        </p>
      )}
      {choices.map(([value, words]) => (
        <label class="choice" key={value}>
          <input type="radio" name={name} value={value} checked={value === chosen} onChange={() => choose(value)} />
          {words}
        </label>
      ))}
    </fieldset>
  );
}

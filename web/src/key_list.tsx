import { setSingleKeys, singleKeys } from "./keys";
import { words } from "./words";

export function KeyList() {
  return (
    <>
      <h2 id="words-title">{words.keys.title}</h2>
      <dl class="keys">
        {words.keys.list.map(([key, does]) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
      <label class="tick">
        <input
          type="checkbox"
          checked={singleKeys.value}
          aria-describedby="single-keys-hint"
          onChange={(event) => setSingleKeys(event.currentTarget.checked)}
        />
        {words.keys.on}
      </label>
      <p class="hint" id="single-keys-hint">
        {words.keys.onHint}
      </p>
    </>
  );
}

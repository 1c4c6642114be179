import { useId } from "preact/hooks";
import type { Doubt, FoodChoice, MessageEntry, MessageFood } from "./diary_replies";
import { diaryWords } from "./diary_words";

const texts = diaryWords.write;

function Doubts({ doubts }: { doubts: Doubt[] }) {
  return (
    <>
      {doubts.map(({ about, sentence }) => (
        <p class="doubt" key={about + sentence}>
          <b>?</b> {sentence}
        </p>
      ))}
    </>
  );
}

/** A food as it was taken, and what else it may be. */
function Food({ food, choose }: { food: MessageFood; choose: (choice: FoodChoice) => void }) {
  const id = useId();
  if (!food.eaten) {
    return (
      <li>
        {food.written}: {texts.notEaten}
      </li>
    );
  }
  return (
    <li>
      ‘{food.written}’: {food.food === null ? <b>{texts.noFood}</b> : texts.taken(food.food, food.grams ?? "")}
      {!food.sure && food.food !== null && <b> ({texts.unsure})</b>}
      {!food.sure && food.others.length > 0 && (
        <span>
          {" "}
          <label class="beside" for={id}>
            {texts.instead(food.said)}
          </label>{" "}
          <select id={id} onChange={(event) => event.currentTarget.value && choose({ said: food.said, food: event.currentTarget.value })}>
            <option value="">{food.food === null ? "…" : texts.asTaken(food.food)}</option>
            {food.others.map((other) => (
              <option key={other} value={other}>
                {other}
              </option>
            ))}
          </select>
        </span>
      )}
      <Doubts doubts={food.doubts} />
    </li>
  );
}

/** The message as it is understood, part by part, with what is not sure marked. */
export function MessagePreview({ entries, choose }: { entries: MessageEntry[]; choose: (choice: FoodChoice) => void }) {
  if (entries.length === 0) return <p class="quiet">{texts.empty}</p>;
  return (
    <div class="understood">
      <h3>{texts.preview}</h3>
      <ol class="plain-list">
        {entries.map((entry, at) => (
          <li key={at} class={entry.sure ? "" : "unsure"}>
            <b>{entry.at}</b>
            {entry.time_uncertain && <b> ({texts.timeUnsure})</b>}, {diaryWords.kinds[entry.kind] ?? entry.kind}: {entry.words}
            {!entry.sure && <span class="marked">{texts.unsure}</span>}
            <Doubts doubts={entry.doubts} />
            {entry.foods.length > 0 && (
              <ul>
                {entry.foods.map((food) => (
                  <Food key={food.written} food={food} choose={choose} />
                ))}
              </ul>
            )}
            {entry.sum && <p class="quiet">{entry.sum}</p>}
          </li>
        ))}
      </ol>
    </div>
  );
}

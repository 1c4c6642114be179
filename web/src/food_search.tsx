import { useEffect, useState } from "preact/hooks";
import { ofClient, read } from "./ask_server";
import type { FoodFound } from "./diary_replies";
import { diaryWords } from "./diary_words";

const texts = diaryWords.food;
const pause = 200;

/** The words by which a food of the table stands in a message: without its commas. */
export const saidFor = (food: string): string =>
  food
    .toLowerCase()
    .replace(/[^\p{L}\p{N} -]+/gu, " ")
    .replace(/\s+/g, " ")
    .trim();

interface Props {
  client: string;
  choose: (portion: string, said: string, food: string) => void;
}

/** A food by its words, put into the text with its usual portion. */
export function FoodSearch({ client, choose }: Props) {
  const [typed, setTyped] = useState("");
  const [found, setFound] = useState<FoodFound[] | null>(null);
  useEffect(() => {
    const asked = typed.trim();
    if (asked.length < 2) {
      setFound(null);
      return;
    }
    let wanted = true;
    const timer = setTimeout(() => {
      read<{ foods: FoodFound[] }>(ofClient(client, `/foods?words=${encodeURIComponent(asked)}`)).then(
        ({ foods }) => wanted && setFound(foods),
        () => wanted && setFound([]),
      );
    }, pause);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [typed, client]);

  return (
    <div class="food-search">
      <label for="food-words">{texts.label}</label>
      <input
        id="food-words"
        type="search"
        value={typed}
        autocomplete="off"
        aria-describedby="food-hint"
        onInput={(event) => setTyped(event.currentTarget.value)}
      />
      <p class="hint" id="food-hint">
        {texts.hint}
      </p>
      <div role="status">{found?.length === 0 && <p class="quiet">{texts.none}</p>}</div>
      {found && found.length > 0 && (
        <ul class="plain-list foods">
          {found.map((one) => (
            <li key={one.food}>
              <button
                type="button"
                onClick={() => {
                  setTyped("");
                  choose(one.portion, saidFor(one.food), one.food);
                }}
              >
                {texts.line(one.food, one.portion, one.grams)}
              </button>
              {one.own && <span class="quiet"> {texts.own}</span>}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

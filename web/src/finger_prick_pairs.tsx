import { causesWords } from "./causes_words";
import { DataTableBox } from "./data_table_box";
import type { Meals, PricksOfMeal } from "./meals_replies";

const say = causesWords.meals;

const read = (pair: PricksOfMeal): string =>
  pair.left_out_because !== null ? say.leftOut(pair.left_out_because) : pair.after_minutes === null ? say.used : `${say.used}, ${say.minutes(pair.after_minutes)}`;

/** The mean first, then every pair: used, or left out with why. */
export function FingerPrickPairs({ meals }: { meals: Meals }) {
  return (
    <>
      <h3>{say.pairs}</h3>
      {meals.pairs.length === 0 && <p class="quiet">{say.noPairs}</p>}
      {meals.mean_rise && <p class="sentence">{meals.mean_rise}</p>}
      {meals.pairs.length > 0 && (
        <DataTableBox
          name={say.pairs}
          table={{ columns: say.pairColumns, rows: meals.pairs.map((pair) => [pair.label, pair.before ?? "", pair.after ?? "", read(pair)]) }}
        />
      )}
    </>
  );
}

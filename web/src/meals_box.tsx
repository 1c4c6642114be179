import { ofClient } from "./ask_server";
import { causesWords } from "./causes_words";
import { DataTableBox } from "./data_table_box";
import { FigureBox } from "./figure_box";
import { FingerPrickPairs } from "./finger_prick_pairs";
import { Loading } from "./loading";
import type { Meals } from "./meals_replies";
import { useReading } from "./reading";
import type { Review } from "./replies";

const say = causesWords.meals;

/** Meals by slot, foods in groups, the 'can't tell' box, rises to ask about, and finger-prick pairs. */
export function MealsBox({ client }: { client: string }) {
  const { value, problem } = useReading<Meals>(ofClient(client, "/meals"), client);
  const review = useReading<Review>(ofClient(client, "/review"), client).value;
  const figure = (id: string) => review?.figures.find((drawn) => drawn.id === id);
  return (
    <section>
      <h2>{say.title}</h2>
      {!value && !problem && <Loading text={say.loading} />}
      {!value && problem && <p class="wrong">{problem.message}</p>}
      {figure("meals_by_slot") && <h3>{say.slots}</h3>}
      <FigureBox figure={figure("meals_by_slot")} />
      {value && (
        <>
          <h3>{say.compared}</h3>
          {value.none_because && <p>{say.none(value.none_because)}</p>}
          {value.foods.length > 0 && (
            <>
              <DataTableBox
                name={say.compared}
                headed
                table={{
                  columns: say.columns,
                  rows: value.foods.map((food) => [say.group(food.group), food.food, say.times(food.times), food.rise, food.interval, food.ranks]),
                }}
              />
              <p class="hint">{say.groupsNote}</p>
            </>
          )}
          {value.sentences.length > 0 && (
            <details open={value.sentences.length <= 3}>
              <summary>{say.inSentences}</summary>
              <ul>
                {value.sentences.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            </details>
          )}
          {value.adjusted_for.length > 0 && <p class="quiet">{say.adjusted(value.adjusted_for.join(", "))}</p>}
          {value.seen_once.length > 0 && (
            <aside class="cannot-tell" aria-label={say.cannotTell}>
              <h4>{say.cannotTell}</h4>
              <p>{say.once}</p>
              <p>{value.seen_once.join(", ")}</p>
            </aside>
          )}
          {value.ask_about.length > 0 && (
            <>
              <h3>{say.askAbout}</h3>
              <p class="hint">{say.askNote}</p>
              <ul>
                {value.ask_about.map(({ label, rise }) => (
                  <li key={label}>{say.rise(label, rise)}</li>
                ))}
              </ul>
            </>
          )}
          <FingerPrickPairs meals={value} />
        </>
      )}
    </section>
  );
}

import { FigureBox } from "./figure_box";
import { FindingBox } from "./finding_box";
import type { Review } from "./replies";
import { words } from "./words";

export function GoesWithIt({ review }: { review: Review }) {
  const { goes_with } = review;
  const figure = (id: string) => review.figures.find((drawn) => drawn.id === id);
  const meals = figure("meals_by_slot");
  return (
    <>
      <h2>{words.review.goesWith}</h2>
      {goes_with.none_because && <p>{goes_with.none_because}</p>}
      {goes_with.questions.length > 0 && <p class="quiet">{words.review.goesWithNote}</p>}
      {goes_with.questions.map((finding, at) => (
        <FindingBox key={at} finding={finding} />
      ))}
      {(meals || goes_with.meal_sentences.length > 0) && <h3>{words.review.meals}</h3>}
      <FigureBox figure={meals} />
      <FigureBox figure={figure("foods")} />
      <ul>
        {goes_with.meal_sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {review.rises_to_ask_about && review.rises_to_ask_about.length > 0 && (
        <>
          <h3>{words.review.askAbout}</h3>
          <ul>
            {review.rises_to_ask_about.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

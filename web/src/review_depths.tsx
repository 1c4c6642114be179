import { DataTableBox } from "./data_table_box";
import { FigureBox } from "./figure_box";
import { GoesWithIt } from "./goes_with_it";
import type { Review } from "./replies";
import { ReviewDays } from "./review_days";
import { words } from "./words";

/** What lies behind the first sheet: the usual day, causes, days, trust, measures. */
export function ReviewDepths({ client, review }: { client: string; review: Review }) {
  const figure = (id: string) => review.figures.find((drawn) => drawn.id === id);
  const [whole, ...parts] = review.measure_tables ?? [];
  return (
    <>
      {figure("usual_day") && (
        <>
          <h2>{words.review.usualDay}</h2>
          <FigureBox figure={figure("usual_day")} />
          <p class="quiet">{words.review.usualDayNote}</p>
        </>
      )}
      <GoesWithIt review={review} />
      <h2>{words.review.days}</h2>
      <ReviewDays client={client} />
      <h2>{words.review.trust}</h2>
      <FigureBox figure={figure("hours_seen")} />
      <ul>
        {review.sufficiency?.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <h2>{words.review.measures}</h2>
      <p class="quiet">{words.review.measuresNote}</p>
      <FigureBox figure={figure("intervals")} />
      {whole && <DataTableBox name={whole.name} table={whole} />}
      {parts.map((part) => (
        <details key={part.name}>
          <summary>{part.name}</summary>
          <DataTableBox name={part.name} table={part} />
        </details>
      ))}
      <h2>{words.review.cautions}</h2>
      <ul>
        {review.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </>
  );
}

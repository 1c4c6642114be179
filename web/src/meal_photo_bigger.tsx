import { useState } from "preact/hooks";
import { diaryWords } from "./diary_words";

const texts = diaryWords.photos;

interface Props {
  src: string;
  alt: string;
  remove: () => void;
  close: () => void;
}

/** A photo as large as the page allows; removed after a question, as it does not come back. Escape closes it. */
export function MealPhotoBigger({ src, alt, remove, close }: Props) {
  const [asking, setAsking] = useState(false);
  return (
    <div
      class="big-photo"
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        close();
      }}
    >
      <img src={src} alt={alt} />
      {asking ? (
        <div role="alert">
          <p>{texts.ask}</p>
          <p class="actions">
            <button type="button" onClick={remove}>
              {texts.yes}
            </button>
            <button type="button" onClick={() => setAsking(false)}>
              {texts.no}
            </button>
          </p>
        </div>
      ) : (
        <p class="actions">
          <button type="button" onClick={() => setAsking(true)}>
            {texts.remove}
          </button>
          <button type="button" onClick={close}>
            {texts.smaller}
          </button>
        </p>
      )}
    </div>
  );
}

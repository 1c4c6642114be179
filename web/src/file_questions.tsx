import type { FileQuestion } from "./bring_in_replies";
import { bringInWords as texts } from "./bring_in_words";

interface Props {
  name: string;
  questions: FileQuestion[];
  answer: (answers: Record<string, string>) => void;
  leaveOut: () => void;
}

/** At most this many at once; an answer may settle the others. */
const mostAtOnce = 2;

/** What only the coach can tell, each answered by one press. */
export function FileQuestions({ name, questions, answer, leaveOut }: Props) {
  if (questions.length === 0) return null;
  const word = (question: FileQuestion, choice: string) =>
    question.code === "whose_file" ? texts.question.theirs(name) : (texts.question.answers[choice] ?? choice);
  return (
    <div class="questions" role="alert">
      {questions.slice(0, mostAtOnce).map((question) => (
        <fieldset key={question.code}>
          <legend>{question.question}</legend>
          {question.guess && <p class="hint">{texts.question.guess(question.guess)}</p>}
          {question.answered_by === null && <p>{question.code === "zone" ? texts.question.zone : texts.question.noAnswer}</p>}
          {question.answered_by !== null && question.choices.length === 0 && (
            <form
              onSubmit={(event) => {
                event.preventDefault();
                const told = String(new FormData(event.currentTarget).get("told") ?? "").trim();
                if (told) answer({ [question.answered_by ?? ""]: told });
              }}
            >
              <label for={`told-${question.code}`}>{texts.question.told}</label>
              <input id={`told-${question.code}`} name="told" autocomplete="off" />
              <button type="submit">{texts.question.answer}</button>
            </form>
          )}
          <p class="actions">
            {question.choices.map((choice) => (
              <button type="button" key={choice} onClick={() => answer({ [question.answered_by ?? ""]: choice })}>
                {word(question, choice)}
              </button>
            ))}
            {question.code === "whose_file" && (
              <button type="button" onClick={leaveOut}>
                {texts.question.notTheirs}
              </button>
            )}
          </p>
        </fieldset>
      ))}
      <p class="quiet">{texts.waiting}</p>
    </div>
  );
}

import { words } from "./words";

/** What went wrong, and how to try again where that helps. */
export function ProblemBox({ sentence, again }: { sentence: string; again?: () => void }) {
  return (
    <section class="problem" role="alert">
      <h1>{words.problem.title}</h1>
      <p>{sentence}</p>
      {again && (
        <button type="button" onClick={again}>
          {words.tryAgain}
        </button>
      )}
    </section>
  );
}

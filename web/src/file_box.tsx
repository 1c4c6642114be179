import { useRef } from "preact/hooks";
import { bringInWords as texts } from "./bring_in_words";
import { FileCorrections } from "./file_corrections";
import type { FileInHand } from "./file_in_hand";
import { FileQuestions } from "./file_questions";
import { FileRows } from "./file_rows";
import { FileUnderstood } from "./file_understood";

interface Props {
  name: string;
  one: FileInHand;
  answer: (answers: Record<string, string>) => void;
  leaveOut: () => void;
}

/** How far the file is, said once and shown. */
function Progress({ one }: { one: FileInHand }) {
  const gone = one.file.size > 0 ? one.sent / one.file.size : 1;
  return (
    <p class="loading" role="status">
      {one.stage === "keeping" ? texts.keeping : gone < 1 ? texts.sending(one.file.name) : texts.understanding}{" "}
      <progress max={1} value={gone < 1 ? gone : undefined} aria-label={texts.sending(one.file.name)} />
    </p>
  );
}

/** One file: what was understood of it, what is asked, and what became of every row. */
export function FileBox({ name, one, answer, leaveOut }: Props) {
  const { reply, problem, stage } = one;
  const heading = useRef<HTMLHeadingElement>(null);
  // The question answered goes: what the file is now understood as is read from its name on.
  const answered = (answers: Record<string, string>) => {
    heading.current?.focus();
    answer(answers);
  };
  return (
    <section class="file" aria-label={one.file.name}>
      <h2 ref={heading} tabIndex={-1}>
        {one.file.name}
      </h2>
      {(stage === "sending" || stage === "keeping") && <Progress one={one} />}
      {problem && stage === "seen" && (
        <p class="wrong" role="alert">
          {problem.message}
        </p>
      )}
      {reply && stage !== "sending" && (
        <>
          {stage === "seen" && <FileQuestions name={name} questions={reply.questions} answer={answered} leaveOut={leaveOut} />}
          <FileRows reply={reply} kept={stage === "kept"} />
          <FileUnderstood reply={reply} />
        </>
      )}
      {stage === "seen" && (
        <>
          <FileCorrections answers={one.answers} answer={answer} />
          <button type="button" onClick={leaveOut}>
            {texts.leaveOut}
          </button>
        </>
      )}
    </section>
  );
}

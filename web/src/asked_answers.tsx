import { ofClient } from "./ask_server";
import type { Answers } from "./causes_replies";
import { causesWords } from "./causes_words";
import { DataTableBox } from "./data_table_box";
import { FindingBox } from "./finding_box";
import { Loading } from "./loading";
import { useReading } from "./reading";

const say = causesWords.ask;

/** The answers to what was asked: each with its interval, what tempers it, and what others found, apart. */
export function AskedAnswers({ client, query }: { client: string; query: string }) {
  const { value, problem } = useReading<Answers>(ofClient(client, `/ask${query}`), client);
  if (!value && problem) return <p class="wrong">{problem.message}</p>;
  if (!value) return <Loading text={say.loading} />;
  return (
    <div class="answers" role="region" aria-label={value.about.words}>
      {value.findings.length === 0 && <p class="empty">{say.none}</p>}
      {value.findings.map((finding) => (
        <div key={finding.cause}>
          <FindingBox finding={finding} />
          {finding.others_words.length > 0 && (
            <details>
              <summary>
                {say.others}
                <span class="unseen">: {finding.question}</span>
              </summary>
              <ul>
                {finding.others_words.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
              {finding.both_words && <p>{say.both(finding.both_words)}</p>}
            </details>
          )}
        </div>
      ))}
      <p class="quiet">
        {say.used(value.used, value.rows_called, value.left_out.length)} {say.together}
      </p>
      {value.left_out.length > 0 && (
        <details>
          <summary>{say.leftOut(value.left_out.length)}</summary>
          <DataTableBox name={say.leftOut(value.left_out.length)} table={{ columns: say.columns, rows: value.left_out.map(({ date, why }) => [date, why]) }} />
        </details>
      )}
    </div>
  );
}

import { ofClient } from "./ask_server";
import { DataTableBox } from "./data_table_box";
import { FindingBox } from "./finding_box";
import type { Story } from "./helped_replies";
import { helpedWords } from "./helped_words";

const say = helpedWords.story;

function List({ title, items, none }: { title: string; items: string[]; none: string }) {
  return (
    <>
      <h3>{title}</h3>
      {items.length === 0 && <p class="quiet">{none}</p>}
      <ul>
        {items.map((item) => (
          <li key={item}>{item}</li>
        ))}
      </ul>
    </>
  );
}

/** What was kept, what is not known, and everything on one line of dates. */
export function StorySoFar({ client, story, waits }: { client: string; story: Story; waits: string }) {
  return (
    <section>
      <h2>{say.title}</h2>
      <List title={say.kept} items={story.kept} none={say.nothingKept} />
      <List title={say.unknown} items={story.unknown} none={say.nothingUnknown} />
      {story.trials.length > 0 && <h3>{say.trials}</h3>}
      {story.trials.map((finding, at) => (
        <FindingBox key={at} finding={finding} under />
      ))}
      <DataTableBox name={say.line} table={{ columns: say.columns, rows: story.line.map(({ label, kind, words }) => [label, kind, words]) }} />
      <p class="actions">
        <a href={ofClient(client, `/story/page${waits}`)} target="_blank" rel="noopener">
          {say.page}
        </a>
      </p>
    </section>
  );
}

import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { HandoutWithNumbers } from "./handout_with_numbers";
import { PaperPreview } from "./paper_preview";
import type { Papers } from "./paper_replies";
import { planWords } from "./plan_words";
import { useReading } from "./reading";

const say = planWords.papers;

interface Line {
  paper: string;
  text: string;
  query?: string;
}

/** The papers on a client: each is looked at here first, then printed. */
export function PapersBox({ client }: { client: string }) {
  const { value } = useReading<Papers>(ofClient(client, "/papers"), client);
  const [shown, setShown] = useState<string | null>(null);
  const [site, setSite] = useState("");
  const [starts, setStarts] = useState("");
  const ofWear = `?${new URLSearchParams({ site, starts }).toString()}`;

  const line = ({ paper, text, query = "" }: Line) => (
    <li key={paper}>
      <span>{text}</span>{" "}
      <button type="button" aria-expanded={shown === paper} aria-label={`${say.look}: ${text}`} onClick={() => setShown(shown === paper ? null : paper)}>
        {say.look}
      </button>{" "}
      <a href={ofClient(client, `/papers/${paper}/print${query}`)} target="_blank" rel="noopener" aria-label={`${text}: ${say.pdf}`}>
        {say.pdf}
      </a>
      {shown === paper && <PaperPreview client={client} paper={paper} query={query} close={() => setShown(null)} />}
    </li>
  );

  return (
    <section class="papers">
      <h2>{say.title}</h2>
      {value?.fewer_numbers && <p class="next">{say.fewer}</p>}
      <h3>{say.client}</h3>
      <ul>{line({ paper: "handout", text: say.handout })}</ul>
      {value?.fewer_numbers && <HandoutWithNumbers client={client} />}
      <h3>{say.coach}</h3>
      <ul>{line({ paper: "talk", text: say.talk })}</ul>
      <h3>{say.prescriber}</h3>
      <ul>{line({ paper: "letter", text: say.letter })}</ul>
      <h3>{say.wear}</h3>
      <div class="two-fields">
        <p>
          <label for="wear-site">{say.site}</label>
          <input id="wear-site" value={site} maxLength={100} aria-describedby="wear-site-hint" onChange={(event) => setSite(event.currentTarget.value)} />
          <span class="hint" id="wear-site-hint">
            {say.siteHint}
          </span>
        </p>
        <p>
          <label for="wear-starts">{say.starts}</label>
          <input id="wear-starts" type="date" value={starts} onChange={(event) => setStarts(event.currentTarget.value)} />
        </p>
      </div>
      <ul>
        {line({ paper: "start-page", text: say.start, query: ofWear })}
        {line({ paper: "diary-sheet-1", text: say.diary(1), query: ofWear })}
        {line({ paper: "diary-sheet-2", text: say.diary(2), query: ofWear })}
      </ul>
      <h3>{say.explaining}</h3>
      <ul>{value?.explaining.map(({ paper, title }) => line({ paper, text: title }))}</ul>
    </section>
  );
}

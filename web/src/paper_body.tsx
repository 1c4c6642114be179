import { DataTableBox } from "./data_table_box";
import { FigureBox } from "./figure_box";
import type { Paper, PaperBlock } from "./paper_replies";
import { planWords } from "./plan_words";

const say = planWords.papers;

/** Lines to write on; the coach is told what they are there for, the client sees the lines. */
function Blank({ why, lines = 1, forClient }: { why: string; lines?: number; forClient: boolean }) {
  if (!forClient) return <span class="quiet">({why})</span>;
  return (
    <span role="img" aria-label={lines === 1 ? say.blankLine : say.lines(lines)}>
      {Array.from({ length: lines }, (_, line) => (
        <span key={line} class={lines === 1 ? "blank" : "blank whole"} />
      ))}
    </span>
  );
}

function Block({ block, paper, forClient }: { block: PaperBlock; paper: Paper; forClient: boolean }) {
  switch (block.kind) {
    case "heading":
      return <h4>{block.text}</h4>;
    case "sentence":
      return <p>{block.strong ? <strong>{block.text}</strong> : block.text}</p>;
    case "list":
      return (
        <ul>
          {block.items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      );
    case "figure":
      return <FigureBox figure={paper.figures[block.place]} narrow={paper.narrow_figures[block.place]} />;
    case "box":
      return (
        <div class="paper-box">
          <h4>{block.title}</h4>
          {block.sentences.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      );
    case "room_to_write":
      return (
        <p class="room">
          {block.label} <Blank why={say.lines(block.lines)} lines={block.lines} forClient={forClient} />
        </p>
      );
    case "zero_to_ten":
      return (
        <p class="room">
          {block.question} <span class="quiet">({say.zeroToTen(block.at_0, block.at_10)})</span>
        </p>
      );
    case "table":
      return <DataTableBox name={paper.title} table={block} />;
    case "contact":
      return (
        <p class="room">
          {block.who}: {block.telephone ?? <Blank why={say.noNumber} forClient={forClient} />}
        </p>
      );
  }
}

/** What stands on a paper, from top to bottom. */
export function PaperBody({ paper, forClient = false }: { paper: Paper; forClient?: boolean }) {
  return (
    <div class="paper">
      {paper.blocks.map((block, at) => (
        <Block key={at} block={block} paper={paper} forClient={forClient} />
      ))}
      {paper.foot && <p class="quiet">{paper.foot}</p>}
    </div>
  );
}

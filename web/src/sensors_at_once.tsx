import { useState } from "preact/hooks";
import { ofClient } from "./ask_server";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import type { AtOnce } from "./trust_replies";
import { trustWords } from "./trust_words";

const texts = trustWords.atOnce;

interface Props {
  client: string;
  overlaps: AtOnce[];
  agreement: string | null;
  again: () => void;
}

/** A choice, by the wear and whether it is chosen. */
type Choice = [wear: string, chosen: boolean];

/** Which of the sensors worn at once is counted, why, and how far they agree; the coach may choose another. */
export function SensorsAtOnce({ client, overlaps, agreement, again }: Props) {
  const { told, wrong, keep } = useKeeping();
  const [back, setBack] = useState<Choice | null>(null);
  if (overlaps.length === 0) return null;
  const choose = async ([wear, chosen]: Choice, done: string, undo: Choice | null) => {
    if (await keep(ofClient(client, "/counted-wear"), { wear, chosen }, done)) {
      setBack(undo);
      again();
    }
  };
  return (
    <section class="at-once">
      <h2>{texts.title}</h2>
      <ol class="plain-list">
        {overlaps.map((one) => (
          <li key={one.from}>
            <b>{texts.span(one.from, one.to)}</b> {texts.counted(one.counted, one.why)}
            <p class="actions">
              {one.others.map((wear) => (
                <button
                  key={wear}
                  type="button"
                  onClick={() => void choose([wear, true], texts.isCounted(wear), one.chosen ? [one.counted, true] : [wear, false])}
                >
                  {texts.count(wear)}
                </button>
              ))}
              {one.chosen && (
                <button type="button" onClick={() => void choose([one.counted, false], texts.isLeft, [one.counted, true])}>
                  {texts.leave}
                </button>
              )}
            </p>
          </li>
        ))}
      </ol>
      <KeptLine told={told} wrong={wrong} />
      {back && (
        <button type="button" onClick={() => void choose(back, texts.undone, null)}>
          {texts.undo}
        </button>
      )}
      {agreement && <p>{agreement}</p>}
    </section>
  );
}

import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { ofClient, Problem, send } from "./ask_server";
import type { FoodChoice, MessageEntry } from "./diary_replies";
import { diaryWords } from "./diary_words";
import { FoodSearch } from "./food_search";
import { KeptLine } from "./kept_line";
import { MessagePreview } from "./message_preview";
import { words } from "./words";

const texts = diaryWords.write;
/** So long after the last key is the text read. */
const pause = 250;

interface Props {
  client: string;
  date: string;
  /** Something was kept: the number of its import. */
  changed: (made: number | null) => void;
}

interface Understood {
  text: string;
  foods: FoodChoice[];
  entries: MessageEntry[];
}

/** What was written or told is typed or pasted, seen as it is understood, and kept by Enter. */
export function WriteEntries({ client, date, changed }: Props) {
  const [text, setText] = useState("");
  const [foods, setFoods] = useState<FoodChoice[]>([]);
  const [understood, setUnderstood] = useState<Understood | null>(null);
  const [warned, setWarned] = useState("");
  const [told, setTold] = useState("");
  const [wrong, setWrong] = useState("");
  const field = useRef<HTMLTextAreaElement>(null);
  const busy = useRef(false);

  useLayoutEffect(() => field.current?.focus({ preventScroll: true }), []);

  const fail = (failure: unknown) =>
    setWrong(`${words.problem.notKept} ${failure instanceof Problem ? failure.message : words.problem.unknown}`);
  const read = async (): Promise<Understood> => {
    const { entries } = await send<{ entries: MessageEntry[] }>(ofClient(client, "/diary/preview"), { text, day: date, foods });
    return { text, foods, entries };
  };

  useEffect(() => {
    if (!text.trim()) {
      setUnderstood(null);
      return;
    }
    let wanted = true;
    const timer = setTimeout(() => {
      read().then((fresh) => wanted && setUnderstood(fresh), fail);
    }, pause);
    return () => {
      wanted = false;
      clearTimeout(timer);
    };
  }, [text, foods, date]);

  const keep = async () => {
    if (busy.current || !text.trim()) return;
    busy.current = true;
    setWrong("");
    try {
      const seen = understood && understood.text === text && understood.foods === foods ? understood : await read();
      setUnderstood(seen);
      if (seen.entries.some(({ sure }) => !sure) && warned !== text) {
        setWarned(text);
        setTold(texts.again);
        return;
      }
      const done = await send<{ stored: number; there_already: number; import: number | null }>(ofClient(client, "/diary"), {
        text,
        day: date,
        foods,
      });
      setTold(done.import === null ? texts.nothingNew : texts.kept(done.stored, done.there_already));
      setText("");
      setFoods([]);
      setUnderstood(null);
      setWarned("");
      changed(done.import);
      field.current?.focus();
    } catch (failure) {
      fail(failure);
    } finally {
      busy.current = false;
    }
  };

  return (
    <section aria-labelledby="write-title">
      <h2 id="write-title">{texts.title}</h2>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void keep();
        }}
      >
        <label for="diary-text">{texts.label}</label>
        <textarea
          id="diary-text"
          ref={field}
          rows={3}
          maxLength={4000}
          value={text}
          aria-describedby="diary-hint"
          onInput={(event) => {
            setText(event.currentTarget.value);
            setTold("");
          }}
          onKeyDown={(event) => {
            if (event.key !== "Enter" || event.shiftKey || event.isComposing) return;
            event.preventDefault();
            void keep();
          }}
        />
        <p class="hint" id="diary-hint">
          {texts.hint}
        </p>
        <MessagePreview
          entries={understood?.entries ?? []}
          choose={(choice) => setFoods((all) => [...all.filter(({ said }) => said !== choice.said), choice])}
        />
        <button type="submit" class="main">
          {texts.keep}
        </button>
        <KeptLine told={told} wrong={wrong} />
      </form>
      <FoodSearch
        client={client}
        choose={(portion, said, food) => {
          setFoods((all) => [...all.filter((one) => one.said !== said), { said, food }]);
          setText((before) => `${before}${before === "" || /\s$/.test(before) ? "" : " "}${portion} ${said}`);
          field.current?.focus();
        }}
      />
    </section>
  );
}

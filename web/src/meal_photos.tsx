import { useRef, useState } from "preact/hooks";
import { ofClient, Problem, sendFile } from "./ask_server";
import type { DiaryEntry } from "./diary_replies";
import { diaryWords } from "./diary_words";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { MealPhotoBigger } from "./meal_photo_bigger";
import { words } from "./words";

const texts = diaryWords.photos;
const longestFile = 12 * 1024 * 1024;

interface Props {
  client: string;
  entry: DiaryEntry;
  most: number;
  changed: () => void;
}

/** The photos of a meal: small beside its row, one shown bigger at a time, added by choosing or dropping. */
export function MealPhotos({ client, entry, most, changed }: Props) {
  const removing = useKeeping();
  const [said, setSaid] = useState({ told: "", wrong: "" });
  const [big, setBig] = useState<number | null>(null);
  const [over, setOver] = useState(false);
  const field = useRef<HTMLInputElement>(null);
  const adding = useRef<HTMLButtonElement>(null);
  const count = entry.photos.length;
  const alt = (id: number) => texts.alt(entry.words, entry.photos.indexOf(id) + 1, count);
  const shown = big !== null && entry.photos.includes(big) ? big : null;

  const add = async (files: File[]) => {
    for (const file of files) {
      if (file.size > longestFile) {
        setSaid({ told: "", wrong: texts.tooLong });
        return;
      }
      setSaid({ told: texts.sending, wrong: "" });
      try {
        await sendFile(ofClient(client, `/diary/entries/${entry.id}/photos`), file, () => {});
        setSaid({ told: texts.added, wrong: "" });
      } catch (failure) {
        setSaid({ told: "", wrong: failure instanceof Problem ? failure.message : words.problem.unknown });
        return;
      } finally {
        changed();
      }
    }
  };
  const remove = (id: number) =>
    removing.keep(ofClient(client, `/photos/${id}/remove`), {}, texts.removed, () => {
      adding.current?.focus(); // the button goes with its photo
      setBig(null);
      setSaid({ told: "", wrong: "" });
      changed();
    });
  const drag = (event: DragEvent) => {
    event.preventDefault();
    setOver(event.type === "dragover" || event.type === "dragenter");
  };
  return (
    <div
      class={over ? "meal-photos over" : "meal-photos"}
      onDragEnter={drag}
      onDragOver={drag}
      onDragLeave={drag}
      onDrop={(event) => {
        drag(event);
        void add(Array.from(event.dataTransfer?.files ?? []));
      }}
    >
      {count > 0 && (
        <ul class="plain-list small-photos">
          {entry.photos.map((id) => (
            <li key={id}>
              <button type="button" aria-expanded={shown === id} aria-label={texts.bigger(alt(id))} onClick={() => setBig(shown === id ? null : id)}>
                <img src={ofClient(client, `/photos/${id}`)} alt="" />
              </button>
            </li>
          ))}
        </ul>
      )}
      {shown !== null && (
        <MealPhotoBigger src={ofClient(client, `/photos/${shown}`)} alt={alt(shown)} remove={() => void remove(shown)} close={() => setBig(null)} />
      )}
      <p class="actions">
        <button
          ref={adding}
          type="button"
          aria-label={texts.addTo(entry.words)}
          aria-disabled={count >= most}
          onClick={() => (count >= most ? setSaid({ told: "", wrong: texts.full(most) }) : field.current?.click())}
        >
          {texts.add}
        </button>
        <span class="quiet">{count >= most ? texts.full(most) : texts.drop}</span>
      </p>
      <input
        ref={field}
        type="file"
        hidden
        multiple
        accept="image/jpeg,image/png"
        aria-label={texts.file(entry.words)}
        onChange={(event) => {
          const files = Array.from(event.currentTarget.files ?? []);
          event.currentTarget.value = "";
          void add(files);
        }}
      />
      <KeptLine told={said.told || removing.told} wrong={said.wrong || removing.wrong} />
    </div>
  );
}

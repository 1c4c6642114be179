import { Fragment } from "preact";
import { useEffect, useState } from "preact/hooks";
import { Problem, sendForFile } from "./ask_server";
import { KeptLine } from "./kept_line";
import { Loading } from "./loading";
import type { BackupTold } from "./practice_book_replies";
import { practiceBookWords } from "./practice_book_words";
import { useReading } from "./reading";
import { saveAs } from "./save_as";
import { session } from "./session";
import { words } from "./words";

const path = "/api/backup";
const texts = practiceBookWords.backup;

/** A backup made and saved; when the last one was; the list of erased clients that goes with one. */
export function BackupBox() {
  const { value, problem, again } = useReading<BackupTold>(path, null);
  const [made, setMade] = useState<{ name: string; address: string } | null>(null);
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState("");
  useEffect(() => () => void (made && URL.revokeObjectURL(made.address)), [made]);

  const make = async () => {
    if (busy) return;
    setBusy(true);
    setWrong("");
    setMade(null);
    try {
      const file = await sendForFile(path, {});
      const address = URL.createObjectURL(file);
      saveAs(file.name, address);
      setMade({ name: file.name, address });
      again();
    } catch (failure) {
      setWrong(failure instanceof Problem ? failure.message : words.problem.unknown);
    } finally {
      setBusy(false);
    }
  };

  const reads = session.value?.role === "reader";
  return (
    <section>
      <h2>{texts.title}</h2>
      <p>
        {texts.lead} {texts.elsewhere}
      </p>
      {problem && <p class="wrong">{problem.message}</p>}
      {!value && !problem && <Loading text={texts.loading} />}
      {value && <p>{value.last ? texts.last(value.last.label, value.last.coach) : texts.none}</p>}
      {reads ? (
        <p class="quiet">{texts.reader}</p>
      ) : (
        <button type="button" aria-disabled={busy} onClick={() => void make()}>
          {texts.make}
        </button>
      )}
      <KeptLine told={busy ? texts.making : made ? texts.made(made.name) : ""} wrong={wrong} />
      {made && (
        <p>
          <a href={made.address} download={made.name}>
            {texts.again}
          </a>
        </p>
      )}
      <h3>{texts.restore}</h3>
      <p>
        {texts.byCommand}{" "}
        <code>
          {(value && value.erased > 0 ? texts.commandWithList : texts.command).split(" ").map((word) => (
            <Fragment key={word}>
              <span class="unbroken">{word}</span>{" "}
            </Fragment>
          ))}
        </code>
      </p>
      {value && <p>{value.erased > 0 ? texts.erased(value.erased) : texts.noneErased}</p>}
      {value && value.erased > 0 && !reads && (
        <p>
          <a href={`${path}/erased`} download>
            {texts.saveList}
          </a>
        </p>
      )}
    </section>
  );
}

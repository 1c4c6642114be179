import { useRef, useState } from "preact/hooks";
import { bringInWords as texts } from "./bring_in_words";
import { ClientAge } from "./client_age";
import { useClientName } from "./client_name";
import { ClientPlaces } from "./client_places";
import { DropField } from "./drop_field";
import { Escalations } from "./escalations";
import { FileBox } from "./file_box";
import { useTaken } from "./given_back";
import { inHand, keepable, sent, type FileInHand } from "./file_in_hand";
import { ImportsList } from "./imports_list";
import { PlaceLink } from "./place_link";
import { PlaceTitle } from "./place_title";

/** Files come in: seen first, then kept whole, and taken back where that was wrong. */
export function BringInPlace({ client }: { client: string }) {
  const name = useClientName(client);
  const [files, setFiles] = useState<FileInHand[]>([]);
  const [told, setTold] = useState("");
  const busy = useRef(false);
  const chooser = useRef<HTMLInputElement>(null);
  const outcome = useTaken<HTMLParagraphElement>(told !== "");

  const put = (next: FileInHand) => setFiles((all) => all.map((one) => (one.key === next.key ? next : one)));
  const look = async (one: FileInHand) => {
    const asked = { ...one, stage: "sending" as const, sent: 0, problem: null };
    put(asked);
    const seen = await sent(client, asked, false, (bytes) => put({ ...asked, sent: bytes }));
    put(seen);
  };
  const add = (chosen: File[]) => {
    const fresh = chosen.map(inHand);
    setFiles((all) => [...all, ...fresh]);
    setTold("");
    for (const one of fresh) void look(one);
  };
  const keepAll = async () => {
    if (busy.current) return;
    busy.current = true;
    const said: string[] = [];
    // One after the other: a later file may go on where an earlier one ended.
    for (const one of files.filter(keepable)) {
      const asked = { ...one, stage: "keeping" as const, sent: 0 };
      put(asked);
      const kept = await sent(client, asked, true, (bytes) => put({ ...asked, sent: bytes }));
      put(kept);
      if (kept.stage === "kept" && kept.reply) {
        said.push(kept.reply.import ? texts.kept(kept.reply.rows.stored, one.file.name) : texts.keptNone(one.file.name));
      }
    }
    setTold(said.join(" "));
    busy.current = false;
  };

  const ready = files.filter(keepable);
  const toKeep = ready.reduce((sum, one) => sum + (one.reply?.rows.stored ?? 0), 0);
  return (
    <article class="bring-in">
      <ClientPlaces client={client} />
      <PlaceTitle text={texts.of(name)} />
      <ClientAge client={client} />
      <p>{texts.lead}</p>
      <DropField chooser={chooser} onFiles={add} />
      {files.map((one) => (
        <FileBox
          key={one.key}
          name={name}
          one={one}
          answer={(answers) => void look({ ...one, answers: { ...one.answers, ...answers } })}
          leaveOut={() => {
            chooser.current?.focus(); // the button goes with its file
            setFiles((all) => all.filter(({ key }) => key !== one.key));
          }}
        />
      ))}
      {files.some(({ stage }) => stage === "seen") && (
        <p>
          <button type="button" class="main" aria-disabled={ready.length === 0} onClick={() => void keepAll()}>
            {ready.length === 0 ? texts.keepNone : texts.keep(toKeep, ready.length)}
          </button>
        </p>
      )}
      <p class="told" role="status" ref={outcome} tabIndex={-1}>
        {told}
      </p>
      {told && <Escalations client={client} waiting />}
      {told && (
        <p>
          <PlaceLink to={{ at: "review", client }}>{texts.nowReview}</PlaceLink>
        </p>
      )}
      <ImportsList client={client} />
    </article>
  );
}

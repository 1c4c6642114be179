import { ofClient } from "./ask_server";
import { draftOf, keepDraft } from "./drafts";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { useReading } from "./reading";
import type { Note } from "./replies";
import { words } from "./words";

export function Notes({ client }: { client: string }) {
  const path = ofClient(client, "/notes");
  const { value, problem, again } = useReading<{ notes: Note[] }>(path, client);
  const { busy, told, wrong, keep } = useKeeping();

  const submit = async (event: Event) => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const text = String(new FormData(form).get("text") ?? "").trim();
    if (text && (await keep(path, { text }, words.notes.kept))) {
      keepDraft("note", client, "");
      // Not the form's reset: that would bring the draft it began with back.
      for (const field of form.querySelectorAll("textarea")) field.value = "";
      again();
    }
  };

  return (
    <>
      <h2 id="words-title">{words.notes.title}</h2>
      <form onSubmit={(event) => void submit(event)}>
        <label for="note-text">{words.notes.label}</label>
        <textarea
          id="note-text"
          name="text"
          rows={3}
          required
          maxLength={4000}
          aria-describedby="note-hint"
          defaultValue={draftOf("note", client)}
          onInput={(event) => keepDraft("note", client, event.currentTarget.value)}
        />
        <p class="hint" id="note-hint">
          {words.notes.hint}
        </p>
        <button type="submit" class="main" aria-disabled={busy}>
          {words.notes.keep}
        </button>
        <KeptLine told={told} wrong={wrong} />
      </form>
      {problem && <p class="wrong">{problem.message}</p>}
      {value && value.notes.length === 0 && <p class="quiet">{words.notes.none}</p>}
      <ul class="written-words">
        {value?.notes.map((note) => (
          <li key={note.id}>
            <span class="quiet">{words.notes.noted(note.on)}</span>
            <br />
            {note.text}
          </li>
        ))}
      </ul>
    </>
  );
}

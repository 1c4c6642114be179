import { ofClient } from "./ask_server";
import { draftOf, keepDraft } from "./drafts";
import { useKeeping } from "./keeping";
import { KeptLine } from "./kept_line";
import { PromiseList } from "./promise_list";
import { words } from "./words";

export function Promises({ client }: { client: string }) {
  const path = ofClient(client, "/promises");
  const { busy, told, wrong, keep } = useKeeping();

  const submit = async (event: Event) => {
    event.preventDefault();
    const element = event.currentTarget as HTMLFormElement;
    const form = new FormData(element);
    const text = String(form.get("text") ?? "").trim();
    const due = String(form.get("due") ?? "");
    if (text && due && (await keep(path, { text, due }, words.promises.kept))) {
      keepDraft("promise", client, "");
      for (const field of element.querySelectorAll("input")) field.value = "";
    }
  };
  return (
    <>
      <h2 id="words-title">{words.promises.title}</h2>
      <form onSubmit={(event) => void submit(event)}>
        <label for="promise-text">{words.promises.label}</label>
        <input
          id="promise-text"
          name="text"
          required
          maxLength={500}
          defaultValue={draftOf("promise", client)}
          onInput={(event) => keepDraft("promise", client, event.currentTarget.value)}
        />
        <label for="promise-due">{words.promises.due}</label>
        <input id="promise-due" name="due" type="date" required />
        <button type="submit" class="main" aria-disabled={busy}>
          {words.promises.keep}
        </button>
        <KeptLine told={told} wrong={wrong} />
      </form>
      <PromiseList client={client} />
    </>
  );
}

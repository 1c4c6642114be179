import { ofClient } from "./ask_server";
import { openWords } from "./words_panel_state";
import { words } from "./words";

/** Writing and printing, beside the title. */
export function ReviewActions({ client }: { client: string }) {
  return (
    <p class="actions">
      <button type="button" onClick={() => openWords({ what: "notes", client })}>
        {words.notes.add} <kbd>n</kbd>
      </button>
      <button type="button" onClick={() => openWords({ what: "promises", client })}>
        {words.promises.add} <kbd>p</kbd>
      </button>
      <a href={ofClient(client, "/review.pdf")} target="_blank" rel="noopener">
        {words.review.pdf}
      </a>
      <a href={ofClient(client, "/review.html")} target="_blank" rel="noopener">
        {words.review.html}
      </a>
    </p>
  );
}

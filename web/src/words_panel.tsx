import { useEffect, useRef } from "preact/hooks";
import { KeyList } from "./key_list";
import { Notes } from "./notes";
import { Promises } from "./promises";
import { closeWords, openedWords } from "./words_panel_state";
import { words } from "./words";

/** The dialog over the page; Escape closes it and the keyboard goes back to where it was. */
export function WordsPanel() {
  const dialog = useRef<HTMLDialogElement>(null);
  const open = openedWords.value;
  useEffect(() => {
    const element = dialog.current;
    if (!element) return;
    if (open && !element.open) {
      element.showModal();
      element.querySelector<HTMLElement>("textarea, input")?.focus();
    }
    if (!open && element.open) element.close();
  }, [open]);

  return (
    <dialog ref={dialog} aria-labelledby="words-title" onClose={closeWords}>
      {open?.what === "notes" && <Notes client={open.client} />}
      {open?.what === "promises" && <Promises client={open.client} />}
      {open?.what === "keys" && <KeyList />}
      <button type="button" class="plain" onClick={closeWords}>
        {words.close}
      </button>
    </dialog>
  );
}

import { useLayoutEffect, useRef } from "preact/hooks";
import { KeyList } from "./key_list";
import { Notes } from "./notes";
import { Promises } from "./promises";
import { session } from "./session";
import { closeWords, openedWords } from "./words_panel_state";
import { words } from "./words";

/** The dialog over the page; Escape closes it and the keyboard goes back to where it was. */
export function WordsPanel() {
  const dialog = useRef<HTMLDialogElement>(null);
  const open = openedWords.value;
  // An open dialog would keep the keyboard from the sign-in; what is written in it stays.
  const seen = open !== null && session.value !== null;
  const shown = useRef(open);
  useLayoutEffect(() => {
    const element = dialog.current;
    if (!element) return;
    shown.current = open;
    if (seen && !element.open) {
      element.showModal();
      element.querySelector<HTMLElement>("textarea, input")?.focus();
    }
    if (!seen && element.open) element.close();
  }, [open, seen]);

  // The browser tells of Escape later: by then a key may have opened the next words.
  const closed = () => {
    if (session.value !== null && openedWords.value === shown.current && !dialog.current?.open) closeWords();
  };

  return (
    <dialog ref={dialog} aria-labelledby="words-title" onClose={closed}>
      {open?.what === "notes" && <Notes client={open.client} />}
      {open?.what === "promises" && <Promises client={open.client} />}
      {open?.what === "keys" && <KeyList />}
      <button type="button" class="plain" onClick={closeWords}>
        {words.close}
      </button>
    </dialog>
  );
}

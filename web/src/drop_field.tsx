import type { RefObject } from "preact";
import { useState } from "preact/hooks";
import { bringInWords as texts } from "./bring_in_words";

/** Files by dropping or by choosing. `chooser`: the field that has them chosen. */
export function DropField({ chooser, onFiles }: { chooser: RefObject<HTMLInputElement | null>; onFiles: (files: File[]) => void }) {
  const [over, setOver] = useState(false);
  const stop = (event: DragEvent) => {
    event.preventDefault();
    setOver(event.type === "dragover" || event.type === "dragenter");
  };
  return (
    <div
      class={over ? "drop over" : "drop"}
      onDragEnter={stop}
      onDragOver={stop}
      onDragLeave={stop}
      onDrop={(event) => {
        stop(event);
        onFiles(Array.from(event.dataTransfer?.files ?? []));
      }}
    >
      <label for="files">{texts.drop}</label>
      <input
        ref={chooser}
        id="files"
        type="file"
        multiple
        aria-describedby="files-hint"
        onChange={(event) => {
          const field = event.currentTarget;
          onFiles(Array.from(field.files ?? []));
          // The same file once more is a new choice.
          field.value = "";
        }}
      />
      <p class="hint" id="files-hint">
        {texts.limits}
      </p>
    </div>
  );
}

import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { ShareGiven } from "./shares_replies";
import { sharesWords } from "./shares_words";

const texts = sharesWords.given;

/** The address of a share that was just given, told once. */
export function ShareAddress({ given, close }: { given: ShareGiven; close: () => void }) {
  const field = useRef<HTMLInputElement>(null);
  const [told, setTold] = useState("");
  useLayoutEffect(() => {
    setTold("");
    field.current?.focus();
    field.current?.select();
  }, [given]);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(location.origin + given.address);
      setTold(texts.copied);
    } catch {
      field.current?.focus();
      field.current?.select();
      setTold(texts.notCopied);
    }
  };
  return (
    <section class="given" aria-labelledby="given-title">
      <h2 id="given-title">{texts.title}</h2>
      <label for="given-address">{texts.label}</label>
      <input id="given-address" ref={field} readOnly value={location.origin + given.address} aria-describedby="given-once" />
      <p id="given-once">
        {texts.once} {given.reach}
      </p>
      <p class="actions">
        <button type="button" onClick={() => void copy()}>
          {texts.copy}
        </button>
        <button type="button" onClick={close}>
          {texts.done}
        </button>
      </p>
      <p class="told" role="status">
        {told}
      </p>
    </section>
  );
}

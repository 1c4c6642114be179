import { useEffect, useRef, useState } from "preact/hooks";
import { DataTableBox } from "./data_table_box";
import type { Figure } from "./replies";
import { safeSvg } from "./safe_svg";
import { words } from "./words";

/** The drawing alone, as the server drew it. */
function Drawing({ figure, name }: { figure: Figure; name: string }) {
  const holder = useRef<HTMLDivElement>(null);
  const [broken, setBroken] = useState(false);
  useEffect(() => {
    const svg = safeSvg(figure.svg, `${figure.id}-`);
    setBroken(svg === null);
    if (svg) holder.current?.replaceChildren(svg);
  }, [figure.svg]);
  return (
    <>
      {broken && <p class="wrong">{words.figure.broken}</p>}
      <div class={`drawn ${name}`} ref={holder} role="region" tabIndex={0} aria-label={figure.title} />
    </>
  );
}

/** A figure: what it says in words, the drawing, and its data as a table. `narrow` replaces it on a phone; `said`: the words stand just above it. */
export function FigureBox({ figure, narrow, said = false }: { figure: Figure | undefined; narrow?: Figure | undefined; said?: boolean }) {
  if (!figure) return null;
  return (
    <figure>
      <figcaption>{said ? figure.title : figure.alternative}</figcaption>
      {!narrow && <p class="quiet slide-hint">{words.figure.slides}</p>}
      <Drawing figure={figure} name={narrow ? "broad" : "slides"} />
      {narrow && <Drawing figure={narrow} name="narrow" />}
      {figure.table.rows.length > 0 && (
        <details>
          <summary>{words.figure.table(figure.title)}</summary>
          <DataTableBox name={figure.title} table={figure.table} />
        </details>
      )}
    </figure>
  );
}

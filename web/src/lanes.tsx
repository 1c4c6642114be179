import type { Signal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import type { LaneItem, Surroundings, TraceMark } from "./replies";
import { share, type Stretch } from "./stretch";
import { words } from "./words";

interface Placed {
  key: string;
  from: number;
  to: number;
  room: number;
  text: string;
  told: string;
  kind: string;
}

/** Less room than this, as a share of the sheet, and words would be a letter or two: the table has them. */
const legibleShare = () => (matchMedia("(max-width: 40rem)").matches ? 0.12 : 0.04);

/** A mark within another one is boxed in it: the words of the outer one tell of both. */
export function markItems(marks: TraceMark[]): (TraceMark & { text: string })[] {
  const inside = (mark: TraceMark) =>
    mark.kind === "very low" && marks.some((other) => other.kind === "low" && other.at <= mark.at && (other.end ?? other.at) >= (mark.end ?? mark.at));
  return marks.map((mark) => ({ ...mark, text: inside(mark) ? "" : mark.label, label: `${mark.from} to ${mark.to}` }));
}

/** Where the items that show stand, and how much room each has for its words before the next one. */
export function placed(items: { at: number; end: number | null; text: string; label: string; kind?: string }[], shown: Stretch): Placed[] {
  // Each keeps its key while others come and go: nothing is made anew while the sheet moves.
  const seen = items
    .map((item, which) => ({ ...item, which }))
    .filter((item) => (item.end ?? item.at) >= shown.from && item.at <= shown.to)
    .sort((a, b) => a.at - b.at);
  // From the last to the first: each has the room up to the next one with words.
  let next = 1;
  const there = seen.reverse().map((item) => {
    const from = Math.max(0, share(item.at, shown));
    const to = Math.min(1, share(item.end ?? item.at, shown));
    const room = Math.max(0, (item.text === "" ? 1 : next) - from);
    if (item.text !== "") next = Math.min(1, share(item.at, shown));
    return { key: `${item.at}-${item.which}`, from, to, room, text: item.text, told: `${item.label} ${item.text}`.trim(), kind: item.kind ?? "" };
  });
  return there.reverse();
}

function Item({ item, legible }: { item: Placed; legible: number }) {
  // By the object model: the page's security policy lets no style stand in markup. As it is put in, before anyone measures.
  const stand = (element: HTMLLIElement | null) => {
    element?.style.setProperty("--from", `${item.from * 100}%`);
    element?.style.setProperty("--length", `${Math.max(0, item.to - item.from) * 100}%`);
    element?.style.setProperty("--room", `${item.room * 100}%`);
  };
  return (
    <li ref={stand} title={item.told} class={`${item.to > item.from ? "lasting" : "moment"}${item.room < legible ? " cramped" : ""}`}>
      <span class={`bar ${item.kind.replace(" ", "-")}`} />
      <span class="told">{item.text}</span>
    </li>
  );
}

function Track({ name, items, shown }: { name: string; items: (LaneItem | (TraceMark & { text: string }))[]; shown: Stretch }) {
  const there = placed(items, shown);
  const legible = legibleShare();
  return (
    <div class="lane">
      <h3>{name}</h3>
      <ul>
        {there.map((item) => (
          <Item key={item.key} item={item} legible={legible} />
        ))}
        {there.length === 0 && <li class="none">{words.day.nothing}</li>}
      </ul>
    </div>
  );
}

/** Marks first, between trace and diary; then what was eaten, done, slept, felt and taken. */
export function Lanes({ trace, shown }: { trace: Surroundings; shown: Signal<Stretch> }) {
  // Apart, as on paper: a suspect stretch would cover a very low in it.
  const tracks = useMemo(() => {
    const marks = markItems(trace.marks);
    return [
      { name: words.day.marks, items: marks.filter(({ kind }) => kind !== "suspect") },
      { name: words.day.suspect, items: marks.filter(({ kind }) => kind === "suspect") },
    ].filter(({ items }) => items.length > 0);
  }, [trace]);
  return (
    <div class="lanes">
      {tracks.map(({ name, items }) => (
        <Track key={name} name={name} items={items} shown={shown.value} />
      ))}
      {trace.lanes.map((lane) => (
        <Track key={lane.name} name={lane.name} items={lane.items} shown={shown.value} />
      ))}
    </div>
  );
}

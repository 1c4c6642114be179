import type { Signal } from "@preact/signals";
import type { Surroundings } from "./replies";
import { useSettled } from "./settled";
import { same, type Stretch } from "./stretch";
import { civilTime } from "./tick_choice";
import { words } from "./words";

/** What stretch is on the screen, in words, once it is at rest: for those who move it without seeing the canvas. */
export function StretchShown({ trace, shown, whole }: { trace: Surroundings; shown: Signal<Stretch>; whole: Stretch }) {
  const settled = useSettled(shown);
  return (
    <p class="quiet" role="status">
      {same(settled, whole) ? words.day.allShown : words.day.shown(civilTime(trace, settled.from), civilTime(trace, settled.to))}
    </p>
  );
}

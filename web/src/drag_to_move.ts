import type { Signal } from "@preact/signals";
import { moved, type Stretch } from "./stretch";

/** Shift and a drag, or a finger, moves the trace along; a plain drag is uPlot's and looks closer. Gives back how to stop. */
export function dragToMove(over: HTMLElement, shown: Signal<Stretch>, whole: Stretch): () => void {
  let last: number | null = null;
  const begin = (event: PointerEvent) => {
    if (event.pointerType === "mouse" && !event.shiftKey) return;
    last = event.clientX;
    over.setPointerCapture(event.pointerId);
    event.stopImmediatePropagation();
  };
  const go = (event: PointerEvent) => {
    if (last === null || over.clientWidth === 0) return;
    shown.value = moved(shown.value, (last - event.clientX) / over.clientWidth, whole);
    last = event.clientX;
  };
  const end = () => {
    last = null;
  };
  // uPlot listens to the mouse: with Shift held, its own selection must not begin.
  const keepOff = (event: MouseEvent) => {
    if (event.shiftKey) event.stopImmediatePropagation();
  };
  over.addEventListener("pointerdown", begin, true);
  over.addEventListener("pointermove", go);
  over.addEventListener("pointerup", end);
  over.addEventListener("pointercancel", end);
  over.addEventListener("mousedown", keepOff, true);
  return () => {
    over.removeEventListener("pointerdown", begin, true);
    over.removeEventListener("pointermove", go);
    over.removeEventListener("pointerup", end);
    over.removeEventListener("pointercancel", end);
    over.removeEventListener("mousedown", keepOff, true);
  };
}

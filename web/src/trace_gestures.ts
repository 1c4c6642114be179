import type { Signal } from "@preact/signals";
import { instantAt, moved, placedAt, same, scaled, type Stretch } from "./stretch";

/** A notch of a wheel, some 100 pixels, comes half as close again; a touchpad's pinch goes in small steps of the same. */
const wheelStep = 0.004;
const pixelsOfALine = 16;
/** Fingers closer than this share of the trace tell nothing of how far apart they are. */
const nearest = 0.02;

/** Whether a drag of the mouse marks a stretch to look closer at, rather than moving the trace. */
export function dragMarks(event: { shiftKey: boolean }, shown: Stretch, whole: Stretch): boolean {
  // While all of it is shown there is nothing to move to.
  return event.shiftKey || same(shown, whole);
}

/** What fingers do: each keeps the instant it was put on, as far as the whole and the closest allow. */
export function afterFingers(held: { instant: number; at: number }[], shown: Stretch, whole: Stretch): Stretch {
  const [one, other] = held;
  if (!one) return shown;
  if (!other) return placedAt(one.instant, one.at, shown.to - shown.from, whole);
  const apart = other.at - one.at;
  if (Math.abs(apart) < nearest || (other.instant - one.instant) * apart <= 0) return shown;
  return placedAt(one.instant, one.at, (other.instant - one.instant) / apart, whole);
}

/** What a turn of the wheel does; null: it is the page's, which scrolls by it. */
export function afterWheel(
  event: { deltaX: number; deltaY: number; ctrlKey: boolean; metaKey: boolean; shiftKey: boolean },
  at: number,
  width: number,
  shown: Stretch,
  whole: Stretch,
): Stretch | null {
  if (event.ctrlKey || event.metaKey) {
    return scaled(shown, Math.exp(event.deltaY * wheelStep), whole, instantAt(at, shown));
  }
  const sideways = event.shiftKey && event.deltaX === 0 ? event.deltaY : event.deltaX;
  if (sideways === 0 || (!event.shiftKey && Math.abs(sideways) <= Math.abs(event.deltaY))) return null;
  const next = moved(shown, sideways / width, whole);
  return same(next, shown) ? null : next;
}

/** Drag, wheel and fingers on the trace. Gives back how to stop. */
export function listenToGestures(over: HTMLElement, shown: Signal<Stretch>, whole: Stretch): () => void {
  const ended = new AbortController();
  const held = new Map<number, { instant: number; at: number }>();
  const shareOf = (event: MouseEvent) => {
    const box = over.getBoundingClientRect();
    return box.width === 0 ? 0 : (event.clientX - box.left) / box.width;
  };
  // Where a finger more or less holds the trace, all take hold anew.
  const takeHold = () => {
    for (const point of held.values()) point.instant = instantAt(point.at, shown.peek());
    over.classList.toggle("held", held.size > 0);
  };
  const begin = (event: PointerEvent) => {
    if (event.button !== 0 || (event.pointerType === "mouse" && dragMarks(event, shown.peek(), whole))) return;
    over.setPointerCapture(event.pointerId);
    held.set(event.pointerId, { instant: 0, at: shareOf(event) });
    takeHold();
  };
  const go = (event: PointerEvent) => {
    const point = held.get(event.pointerId);
    if (!point) return;
    point.at = shareOf(event);
    shown.value = afterFingers([...held.values()], shown.peek(), whole);
  };
  const end = (event: PointerEvent) => {
    if (held.delete(event.pointerId)) takeHold();
  };
  const turn = (event: WheelEvent) => {
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? pixelsOfALine : 1;
    const { ctrlKey, metaKey, shiftKey } = event;
    const by = { deltaX: event.deltaX * lines, deltaY: event.deltaY * lines, ctrlKey, metaKey, shiftKey };
    const next = afterWheel(by, shareOf(event), over.clientWidth, shown.peek(), whole);
    if (!next) return;
    event.preventDefault();
    shown.value = next;
  };
  // Two fingers are the trace's; one that goes up or down scrolls the page.
  const keepOff = (event: TouchEvent) => {
    if (event.touches.length > 1 && event.cancelable) event.preventDefault();
  };
  const { signal } = ended;
  over.addEventListener("pointerdown", begin, { signal });
  over.addEventListener("pointermove", go, { signal });
  over.addEventListener("pointerup", end, { signal });
  over.addEventListener("pointercancel", end, { signal });
  over.addEventListener("wheel", turn, { signal, passive: false });
  over.addEventListener("touchmove", keepOff, { signal, passive: false });
  return () => ended.abort();
}

import type { LabelledInstant, Stretched } from "./replies";
import type { Stretch } from "./stretch";

/** Steps of the clock that an axis may take, minutes. */
const steps = [15, 30, 60, 180, 360, 720, 1440];
/** A label needs so much room, pixels. */
const room = 58;

/** Minutes after midnight of a label such as 14:30; null for any other text. */
export function minutesOf(label: string): number | null {
  const read = /^(\d{2}):(\d{2})$/.exec(label);
  return read ? Number(read[1]) * 60 + Number(read[2]) : null;
}

/**
 * The server's ticks that have room for their labels. Round times of the clock go first; midnight bears the
 * day's name; a tick of another text, as where the clock changes, always stays.
 */
export function legible(trace: Stretched, shown: Stretch, width: number): LabelledInstant[] {
  const perPixel = (shown.to - shown.from) / Math.max(1, width);
  const step = steps.find((minutes) => minutes * 60 >= room * perPixel) ?? 1440;
  const borders = new Map(trace.day_borders.map((border) => [border.at, border.label]));
  const kept: LabelledInstant[] = [];
  for (const tick of trace.ticks) {
    if (tick.at < shown.from || tick.at > shown.to) continue;
    const minutes = minutesOf(tick.label);
    if (minutes !== null && minutes % step !== 0) continue;
    const several = trace.day_borders.length > 2;
    const label = (several && borders.get(tick.at)) || tick.label;
    const last = kept[kept.length - 1];
    const needs = label === tick.label ? room : 1.6 * room;
    if (last && (tick.at - last.at) / perPixel < needs && minutes !== null) {
      if (minutes !== 0 || borders.get(last.at)) continue;
      kept.pop();
    }
    kept.push({ at: tick.at, label });
  }
  return kept;
}

/** About when by the client's clock: the day and the server's last tick before it. */
export function civilTime(trace: Stretched, at: number): string {
  const before = (list: LabelledInstant[]) => list.filter((one) => one.at <= at).pop()?.label ?? "";
  return `${before(trace.day_borders)}, ${before(trace.ticks)}`;
}

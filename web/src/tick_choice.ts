import type { LabelledInstant, Surroundings } from "./replies";
import type { Stretch } from "./stretch";

/** Steps of the clock that an axis may take, minutes. */
const steps = [15, 30, 60, 180, 360, 720, 1440];
/** A label needs so much room, pixels. */
const room = 58;
/** Where an hour is narrower than so many pixels, nobody sees that the clock changed. */
const seenHour = 4;

/** Minutes after midnight of a label such as 14:30 or 2:30 pm; null for any other text. */
export function minutesOf(label: string): number | null {
  const read = /^(\d{1,2}):(\d{2})(?: ([ap])m)?$/.exec(label);
  if (!read) return null;
  const hour = read[3] ? (Number(read[1]) % 12) + (read[3] === "p" ? 12 : 0) : Number(read[1]);
  return hour * 60 + Number(read[2]);
}

/** Every how many days there is room for a day's name. */
export function daysApart(shown: Stretch, width: number): number {
  return Math.ceil((1.6 * room * (shown.to - shown.from)) / Math.max(1, width) / 86_400);
}

/** A tick of the server's, read once for all the frames that it is chosen in. */
export interface ReadTick extends LabelledInstant {
  minutes: number | null;
  /** Which of the stretch's civil days begins here; null: none. */
  day: number | null;
  /** Whether the day's name stands for the clock's time. */
  named: boolean;
}

export function ticksOf(trace: Surroundings): ReadTick[] {
  const days = new Map(trace.day_borders.map((border, day) => [border.at, { day, label: border.label }]));
  const several = trace.day_borders.length > 2;
  return trace.ticks.map(({ at, label }) => {
    const begun = days.get(at);
    const named = several && begun !== undefined;
    return { at, minutes: minutesOf(label), label: named ? begun.label : label, day: begun?.day ?? null, named };
  });
}

/** By how it is written: a time, a day's name, a time and a word beside it. */
function roomOf(tick: ReadTick): number {
  if (tick.minutes === null) return 2 * room;
  return tick.named ? 1.6 * room : room;
}

/**
 * The ticks that have room for their labels. Round times of the clock go first; midnight bears the day's name;
 * a tick of another text, as where the clock changes, goes before its neighbours wherever an hour has a width to be seen.
 * While the trace moves, labels stay theirs.
 */
export function legible(ticks: ReadTick[], shown: Stretch, width: number): LabelledInstant[] {
  const perPixel = (shown.to - shown.from) / Math.max(1, width);
  const step = steps.find((minutes) => minutes * 60 >= room * perPixel) ?? 1440;
  const eachDays = daysApart(shown, width);
  const kept: ReadTick[] = [];
  for (const tick of ticks) {
    if (tick.at < shown.from || tick.at > shown.to) continue;
    const { minutes } = tick;
    if (minutes === null ? 3600 < seenHour * perPixel : minutes % step !== 0) continue;
    if (tick.named && (tick.day ?? 0) % eachDays !== 0) continue;
    const last = kept[kept.length - 1];
    const needs = Math.max(roomOf(tick), last ? roomOf(last) : 0);
    if (last && (tick.at - last.at) / perPixel < needs) {
      const goesFirst = minutes === null || (minutes === 0 && last.day === null && last.minutes !== null);
      if (!goesFirst) continue;
      kept.pop();
    }
    kept.push(tick);
  }
  return kept;
}

/** About when by the client's clock: the day and the server's last tick before it. */
export function civilTime(trace: Surroundings, at: number): string {
  const before = (list: LabelledInstant[]) => list.filter((one) => one.at <= at).pop()?.label ?? "";
  return `${before(trace.day_borders)}, ${before(trace.ticks)}`;
}

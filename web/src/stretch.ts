/** A stretch of time on the screen, epoch seconds. */
export interface Stretch {
  from: number;
  to: number;
}

/** No closer than a quarter of an hour: below that a trace has no shape. */
const closest = 15 * 60;

/** `wanted`, moved and cut so that it stays within `whole`. */
export function within(wanted: Stretch, whole: Stretch): Stretch {
  const length = Math.min(Math.max(wanted.to - wanted.from, closest), whole.to - whole.from);
  const from = Math.min(Math.max(wanted.from, whole.from), whole.to - length);
  return { from, to: from + length };
}

/** Closer (below 1) or wider (above 1) about an instant, which stays where it stands, or about the middle. */
export function scaled(shown: Stretch, by: number, whole: Stretch, about = (shown.from + shown.to) / 2): Stretch {
  const length = Math.max(closest, (shown.to - shown.from) * by);
  return placedAt(about, share(about, shown), length, whole);
}

/** Moved by a share of its own length; below 0 is earlier. */
export function moved(shown: Stretch, by: number, whole: Stretch): Stretch {
  const step = (shown.to - shown.from) * by;
  return within({ from: shown.from + step, to: shown.to + step }, whole);
}

/** A stretch so long, with an instant standing at a share of it. */
export function placedAt(instant: number, at: number, length: number, whole: Stretch): Stretch {
  const from = instant - at * length;
  return within({ from, to: from + length }, whole);
}

/** Where an instant stands, 0 at the left edge and 1 at the right. */
export function share(at: number, shown: Stretch): number {
  return (at - shown.from) / (shown.to - shown.from);
}

/** The instant that stands at a share of the stretch. */
export function instantAt(at: number, shown: Stretch): number {
  return shown.from + at * (shown.to - shown.from);
}

export function same(one: Stretch, other: Stretch): boolean {
  return one.from === other.from && one.to === other.to;
}

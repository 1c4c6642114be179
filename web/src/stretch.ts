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

/** Closer (below 1) or wider (above 1) about the middle. */
export function scaled(shown: Stretch, by: number, whole: Stretch): Stretch {
  const middle = (shown.from + shown.to) / 2;
  const half = ((shown.to - shown.from) / 2) * by;
  return within({ from: middle - half, to: middle + half }, whole);
}

/** Moved by a share of its own length; below 0 is earlier. */
export function moved(shown: Stretch, by: number, whole: Stretch): Stretch {
  const step = (shown.to - shown.from) * by;
  return within({ from: shown.from + step, to: shown.to + step }, whole);
}

/** Where an instant stands, 0 at the left edge and 1 at the right. */
export function share(at: number, shown: Stretch): number {
  return (at - shown.from) / (shown.to - shown.from);
}

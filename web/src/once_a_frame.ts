/** Draws at most once in each of the screen's frames, however often it is asked to. */
export function onceAFrame(draw: () => void): { ask: () => void; stop: () => void } {
  let waiting: number | null = null;
  return {
    ask: () => {
      waiting ??= requestAnimationFrame(() => {
        waiting = null;
        draw();
      });
    },
    stop: () => {
      if (waiting !== null) cancelAnimationFrame(waiting);
      waiting = null;
    },
  };
}

// How long the page takes from a click or a key to what is painted next, told by the browser itself (Event Timing, W3C).
import { appendFileSync } from "node:fs";
import { basename } from "node:path";

/** In the page: each event of an interaction that took 16 ms or longer, and how many interactions there were. */
function observe() {
  const named = (target) => {
    if (!(target instanceof Element)) return "";
    const words = (target.getAttribute("aria-label") ?? target.textContent ?? "").trim().slice(0, 40);
    return `${target.localName}${target.id ? `#${target.id}` : ""} '${words}'`;
  };
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      if (!entry.interactionId) continue;
      const { interactionId, name, duration, startTime, processingStart, processingEnd } = entry;
      void globalThis.tellInteraction({
        kind: "event",
        visit: performance.timeOrigin,
        interactionId,
        name,
        duration,
        waited: processingStart - startTime,
        worked: processingEnd - processingStart,
        target: named(entry.target),
        place: location.pathname,
      });
    }
  }).observe({ type: "event", durationThreshold: 16, buffered: true });
  // A key or a pointer let go is one interaction, whether or not it was slow enough to be told.
  for (const end of ["keyup", "pointerup"]) {
    addEventListener(end, (event) => event.isTrusted && void globalThis.tellInteraction({ kind: "ended" }), true);
  }
}

/** Every context of every browser that is launched from now on writes its interactions as lines of JSON. */
export function tellInteractions(chromium, file) {
  const launch = chromium.launch.bind(chromium);
  const test = basename(process.argv[1] ?? "");
  chromium.launch = async (options) => {
    const browser = await launch(options);
    const newContext = browser.newContext.bind(browser);
    browser.newContext = async (look) => {
      const context = await newContext(look);
      await context.exposeFunction("tellInteraction", (told) => appendFileSync(file, `${JSON.stringify({ test, ...told })}\n`));
      await context.addInitScript(observe);
      return context;
    };
    return browser;
  };
}

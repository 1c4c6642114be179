// From the click on a client's ninety days to the trace painted, with readings of every minute, of every five, and with a diary. Not a test.
// Usage: node bench/ninety_days.mjs BUILD [RUNS]
import { loadavg } from "node:os";
import { chromium } from "playwright-core";
import { launchOptions, signIn } from "../tests/browser/browser.mjs";
import { servedPractice } from "../tests/browser/practice.mjs";
import { addLongWears } from "./long_wears.mjs";

const [build, runs = "15"] = process.argv.slice(2);
const practice = await servedPractice(build);
const browser = await chromium.launch(launchOptions);

/** In the page: when the click came, and when the frame with the trace in it was shown (Element Timing, W3C, of the line above the trace). */
function watch() {
  const seen = { clicked: 0, painted: 0 };
  globalThis.seen = seen;
  addEventListener("click", (event) => (seen.clicked ||= event.timeStamp), { capture: true, once: true });
  new PerformanceObserver((list) => {
    for (const { identifier, renderTime } of list.getEntries()) if (identifier === "trace") seen.painted ||= renderTime;
  }).observe({ type: "element" });
  const look = () => {
    const line = document.querySelector(".day .under");
    if (!line || !document.querySelector(".plot canvas") || !document.querySelector(".sheet .lane")) return;
    watcher.disconnect();
    line.setAttribute("elementtiming", "trace");
  };
  const watcher = new MutationObserver(look);
  watcher.observe(document, { childList: true, subtree: true });
}

const middle = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const told = (values) => `median ${middle(values).toFixed(0)} ms, best ${Math.min(...values).toFixed(0)}, longest ${Math.max(...values).toFixed(0)}`;

async function opening(handle, { anew }) {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  const page = await context.newPage();
  await page.goto(practice.address);
  await signIn(page, practice.passphrase);
  const [whole, waiting, coming, after] = [[], [], [], []];
  for (let run = 0; run < Number(runs); ++run) {
    // A change of this client's: nothing that the service keeps of them holds any longer.
    if (anew) await practice.command("note", handle, `An invented note ${run}`);
    await page.goto(`${practice.address}/client/${handle}`);
    const link = page.locator("a:has-text('The last 90 days of readings')");
    await link.waitFor();
    await page.waitForTimeout(anew ? 1500 : 300);
    await page.evaluate(watch);
    await link.click();
    await page.waitForFunction(() => globalThis.seen.painted > 0);
    const { seen, asked } = await page.evaluate(() => {
      const [reply] = performance.getEntriesByType("resource").filter(({ name }) => name.includes("/trace?days=90")).slice(-1);
      return { seen: globalThis.seen, asked: { ...reply.toJSON() } };
    });
    whole.push(seen.painted - seen.clicked);
    waiting.push(asked.responseStart - seen.clicked);
    coming.push(asked.responseEnd - asked.responseStart);
    after.push(seen.painted - asked.responseEnd);
  }
  await context.close();
  console.log(
    `${handle}, ${anew ? "after a change of the client's" : "looked at before"}: ${told(whole)}; to the first byte ${middle(waiting).toFixed(0)}, ` +
      `its bytes ${middle(coming).toFixed(0)}, reading and painting ${middle(after).toFixed(0)} (medians of ${runs})`,
  );
}

try {
  await addLongWears(practice);
  console.log(`load ${loadavg()[0].toFixed(2)} before; Chromium ${browser.version()}, headless, no graphics card`);
  for (const handle of ["f90", "m90", "c05"]) {
    await opening(handle, { anew: false });
    await opening(handle, { anew: true });
  }
  console.log(`load ${loadavg()[0].toFixed(2)} after`);
} finally {
  await browser.close();
  await practice.stop();
}

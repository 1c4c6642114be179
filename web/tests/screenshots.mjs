// Pictures of each place on the demo practice: desktop, phone, dark, and in print's grey.
// Usage: node tests/screenshots.mjs BUILD OUT
import { mkdirSync } from "node:fs";
import { chromium } from "playwright-core";
import { launchOptions, signIn } from "./browser/browser.mjs";
import { servedPractice } from "./browser/practice.mjs";

const [build, out] = process.argv.slice(2);
if (!build || !out) {
  console.error("usage: node tests/screenshots.mjs BUILD OUT");
  process.exit(2);
}
mkdirSync(out, { recursive: true });
const looks = {
  desktop: { viewport: { width: 1280, height: 900 } },
  phone: { viewport: { width: 360, height: 740 }, deviceScaleFactor: 2 },
  dark: { viewport: { width: 1280, height: 900 }, colorScheme: "dark" },
};
const places = {
  caseload: ["/", ".client-row"],
  review: ["/client/c09", ".review .days a"],
  day: ["/client/c09/day/2026-04-18", ".plot canvas"],
  wear: ["/client/c09/trace", ".plot canvas"],
  trust: ["/client/c09/trust", ".trust h2"],
  diary: ["/client/c09/diary/2026-04-18", ".entries li"],
  facts: ["/client/c09/facts", ".facts"],
  "bring-in": ["/client/c09/bring-in", ".imports li"],
  shares: ["/client/c09/shares", "#share-until"],
  "new-client": ["/new-client", "#new-name"],
  causes: ["/client/c10/goes-with", ".trials"],
  plan: ["/client/c03/plan", ".papers"],
  helped: ["/client/c05/helped", ".change-helped"],
  sensor: ["/client/c05/sensor", ".finding"],
};

const practice = await servedPractice(build);
const browser = await chromium.launch(launchOptions);
try {
  for (const [look, options] of Object.entries(looks)) {
    const page = await (await browser.newContext(options)).newPage();
    await page.goto(practice.address);
    await page.waitForSelector("#coach");
    await page.screenshot({ path: `${out}/sign-in-${look}.png` });
    await signIn(page, practice.passphrase);
    for (const [name, [path, ready]] of Object.entries(places)) {
      await page.goto(practice.address + path);
      await page.waitForSelector(ready);
      await page.waitForTimeout(300);
      await page.screenshot({ path: `${out}/${name}-${look}.png`, fullPage: true });
      if (look !== "desktop") continue;
      await page.emulateMedia({ media: "print" });
      await page.evaluate(() => document.documentElement.style.setProperty("filter", "grayscale(1)"));
      await page.screenshot({ path: `${out}/${name}-grey.png`, fullPage: true });
      await page.emulateMedia({ media: "screen" });
    }
    await page.goto(practice.address);
    await page.waitForSelector(".client-row");
    await page.keyboard.press("n");
    await page.waitForSelector("dialog[open]");
    await page.screenshot({ path: `${out}/note-${look}.png` });
  }
} finally {
  await browser.close();
  await practice.stop();
}

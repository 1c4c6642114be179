// Pictures of each place on the demo practice: desktop, phone, dark, and in print's grey.
// Usage: node tests/screenshots.mjs BUILD OUT [PLACE...]   (no PLACE: all of them)
import { mkdirSync } from "node:fs";
import { chromium } from "playwright-core";
import { launchOptions, signIn } from "./browser/browser.mjs";
import { inventedPlate } from "./browser/invented_plate.mjs";
import { servedPractice } from "./browser/practice.mjs";

const [build, out, ...wanted] = process.argv.slice(2);
if (!build || !out) {
  console.error("usage: node tests/screenshots.mjs BUILD OUT [PLACE...]");
  process.exit(2);
}
mkdirSync(out, { recursive: true });
const looks = {
  desktop: { viewport: { width: 1280, height: 900 } },
  phone: { viewport: { width: 360, height: 740 }, deviceScaleFactor: 2 },
  dark: { viewport: { width: 1280, height: 900 }, colorScheme: "dark" },
};
/** Address, and what stands there once the place is ready. */
const places = {
  caseload: ["/", ".client-row"],
  review: ["/client/c09", ".review .days a"],
  day: ["/client/c09/day/2026-04-18", ".plot canvas"],
  wear: ["/client/c09/trace", ".plot canvas"],
  "ninety-days": ["/client/c09/ninety-days", ".plot canvas"],
  trust: ["/client/c09/trust", ".trust h2"],
  diary: ["/client/c08/diary/2026-04-17", ".entries li"],
  facts: ["/client/c09/facts", ".facts"],
  "bring-in": ["/client/c09/bring-in", ".imports li"],
  shares: ["/client/c09/shares", "#share-until"],
  "new-client": ["/new-client", "#new-name"],
  writing: ["/writing", ".writing fieldset"],
  "practice-book": ["/practice-book", ".deeds li"],
  "who-did-what": ["/client/c09/who-did-what", ".deeds li"],
  causes: ["/client/c10/goes-with", ".trials"],
  plan: ["/client/c03/plan", ".papers"],
  helped: ["/client/c05/helped", ".change-helped"],
  sensor: ["/client/c05/sensor", ".finding"],
};
const asked = (name) => wanted.length === 0 || wanted.includes(name);

/** The page as it stands, and on the desktop as it is printed, without colour. */
async function picture(page, name, look) {
  await page.waitForTimeout(300);
  await page.screenshot({ path: `${out}/${name}-${look}.png`, fullPage: true });
  if (look !== "desktop") return;
  await page.emulateMedia({ media: "print" });
  await page.evaluate(() => document.documentElement.style.setProperty("filter", "grayscale(1)"));
  await page.screenshot({ path: `${out}/${name}-grey.png`, fullPage: true });
  await page.evaluate(() => document.documentElement.style.removeProperty("filter"));
  await page.emulateMedia({ media: "screen" });
}

const practice = await servedPractice(build);
const browser = await chromium.launch(launchOptions);
try {
  const kinds = "hours in range, lows, day sheets, diary, medicines";
  const told = await practice.command("share", "c09", "--to", "my sister (invented)", "--for", "to help at night", "--kinds", kinds);
  const share = /\/share\/[\w-]{43}/.exec(told)?.[0];
  for (const [look, options] of Object.entries(looks)) {
    const page = await (await browser.newContext(options)).newPage();
    await page.goto(practice.address);
    await page.waitForSelector("#coach");
    if (asked("sign-in")) await picture(page, "sign-in", look);
    if (asked("holder") && share) {
      await page.goto(practice.address + share);
      await picture(page, "holder", look);
      await page.goto(practice.address);
    }
    await signIn(page, practice.passphrase);
    for (const [name, [path, ready]] of Object.entries(places)) {
      if (!asked(name)) continue;
      await page.goto(practice.address + path);
      await page.waitForSelector(ready);
      if (name === "diary" && (await page.locator(".small-photos").count()) === 0) {
        await page.locator(".entries > li:has-text('fish, potatoes, beans') input[type=file]").setInputFiles(await inventedPlate(page));
        await page.waitForSelector(".small-photos img");
      }
      await picture(page, name, look);
    }
    if (asked("turned")) {
      await page.goto(`${practice.address}/client/c01/plan`);
      await page.waitForSelector(".papers");
      await page.click("button:has-text('Turn the screen to the client')");
      await page.waitForSelector(".client-view .paper");
      await picture(page, "turned", look);
      await page.click("button:has-text('Turn the screen back')");
    }
    if (asked("note")) {
      await page.goto(practice.address);
      await page.waitForSelector(".client-row");
      await page.keyboard.press("n");
      await page.waitForSelector("dialog[open]");
      await page.screenshot({ path: `${out}/note-${look}.png` });
    }
  }
} finally {
  await browser.close();
  await practice.stop();
}

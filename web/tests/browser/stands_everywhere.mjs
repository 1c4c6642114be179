import assert from "node:assert/strict";
import { fitsTheWidth, nothingSerious } from "./on_every_place.mjs";
import { looks } from "./opened.mjs";

/** The place at a path passes axe by day and by night, has one h1, and fits a phone and a window at 200 % zoom. */
export async function standsEverywhere(opened, path, ready, reach = async () => {}) {
  // Opened once, as on a phone; the window then grows around it.
  const page = await opened.newPage(looks[0]);
  await page.goto(opened.practice.address + path);
  await reach(page);
  await page.waitForSelector(ready);
  for (const { viewport, colorScheme = "light" } of looks) {
    await page.setViewportSize(viewport);
    await page.emulateMedia({ colorScheme });
    await fitsTheWidth(page);
    await nothingSerious(page);
    assert.equal(await page.locator("h1").count(), 1);
  }
  await page.context().close();
}

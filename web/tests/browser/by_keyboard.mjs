// What a keyboard-only run needs: keys are all it sends, and it looks at where the keyboard stands.
import assert from "node:assert/strict";

/** The page signed in anew by typing, telling from then on if anything is pointed at. */
export async function signedInByKeyboard({ page, practice }) {
  await page.addInitScript(() => {
    globalThis.pointedAt = 0;
    // A key on a button makes a click too, but no pointer goes down for it.
    addEventListener("pointerdown", () => (globalThis.pointedAt += 1), true);
  });
  await page.context().clearCookies();
  await page.goto(practice.address);
  await page.waitForSelector("#coach");
  await tabTo(page, "#coach");
  await page.keyboard.type("o1");
  await tabTo(page, "#passphrase");
  await page.keyboard.type(practice.passphrase);
  await page.keyboard.press("Enter");
  await standsOn(page, "h1:text-is('Who needs me')");
}

/** Waits until the keyboard stands on what the selector names. */
export async function standsOn(page, selector) {
  const there = page.locator(selector).first();
  await there.waitFor();
  const until = Date.now() + 60_000; // a busy machine is no failure
  while (!(await there.evaluate((element) => element === document.activeElement))) {
    if (Date.now() > until) {
      const where = await page.evaluate(() => document.activeElement?.outerHTML.slice(0, 200));
      assert.fail(`the keyboard stands on ${where}, not on ${selector}`);
    }
    await page.waitForTimeout(50);
  }
}

/** What is wrong with the place of the keyboard: unseen, out of the window, or before the place it came from. */
const faultOfFocus = () => {
  const now = document.activeElement;
  const before = globalThis.stoodOn;
  globalThis.stoodOn = now;
  if (!now || now === document.body) return null; // round the end, by way of the window itself
  const { outlineStyle, outlineWidth } = getComputedStyle(now);
  const box = now.getBoundingClientRect();
  if (outlineStyle === "none" || parseFloat(outlineWidth) < 2) return "has no mark of the keyboard";
  if (box.width === 0 || box.height === 0) return "has no size";
  if (box.bottom <= 0 || box.top >= innerHeight) return "is out of the window";
  const back = before?.isConnected && before !== document.body && (before.compareDocumentPosition(now) & Node.DOCUMENT_POSITION_PRECEDING);
  if (back && !before.contains(now)) return "comes before what it followed";
  return null;
};

/** Goes on by Tab, looking at every stop, until the keyboard stands on what the selector names. */
export async function tabTo(page, selector, most = 250) {
  await page.locator(selector).first().waitFor();
  await page.evaluate(() => (globalThis.stoodOn = document.activeElement));
  for (let stops = 0; stops < most; stops += 1) {
    await page.keyboard.press("Tab");
    const fault = await page.evaluate(faultOfFocus);
    const where = await page.evaluate(() => document.activeElement?.outerHTML.slice(0, 200));
    assert.equal(fault, null, `${where} ${fault}`);
    if (await page.locator(selector).first().evaluate((element) => element === document.activeElement)) return;
  }
  assert.fail(`no ${selector} in ${most} stops`);
}

/** From the caseload to a client's review, over those folded away where the client is one of them. */
export async function openClient(page, client) {
  const link = `a[data-client='${client}']`;
  await page.locator(link).waitFor({ state: "attached" });
  if (!(await page.locator(link).isVisible())) {
    await tabTo(page, ".nothing-due > summary");
    await page.keyboard.press("Enter");
  }
  await tabTo(page, link);
  await page.keyboard.press("Enter");
  await standsOn(page, "h1");
  await page.waitForURL(`**/client/${client}`);
}

/** From any place of the client to another by the line of places. */
export async function openPlace(page, name) {
  await tabTo(page, `.client-places a:text-is("${name}")`);
  await page.keyboard.press("Enter");
  await page.locator(`.client-places b:text-is("${name}")`).waitFor();
  await standsOn(page, "h1");
}

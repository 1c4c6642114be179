// More tasks done by keyboard alone: a messy file brought in (T1), a walk trial planned and drawn by lot (T13). The window
// in which the system lets a file be chosen is not the page's: it is opened by a key, and answered for it.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { openClient, openPlace, signedInByKeyboard, standsOn, tabTo } from "./by_keyboard.mjs";
import { messyFile } from "./messy_file.mjs";
import { openedPage } from "./opened.mjs";

let opened;
let page;
let practice;

const pressOn = async (selector) => {
  await tabTo(page, selector);
  await page.keyboard.press("Enter");
};

/** Opens the choice of files by a key on the field and answers it. */
async function choose(file) {
  await tabTo(page, "#files");
  const [chooser] = await Promise.all([page.waitForEvent("filechooser"), page.keyboard.press("Space")]);
  await chooser.setFiles(file);
  await page.waitForSelector("legend");
}

before(async () => {
  opened = await openedPage(/\b(401|404|409|422)\b/);
  ({ page, practice } = opened);
  // From the start: asked to stand in for the window as the key is pressed, the browser may open its own first.
  page.on("filechooser", () => {});
  await practice.command("client", "add", "Client Sorrel (invented)", "--handle", "c40");
  await signedInByKeyboard(opened);
});
after(async () => opened?.close());

describe("By keyboard alone: a file and a trial", { concurrency: false }, () => {
  test("a messy file: its question answered, every row accounted for, left out again (T1)", async () => {
    await openClient(page, "c40");
    await pressOn("a:has-text('Bring in the first file')");
    await standsOn(page, "h1:has-text('Bring in: Client Sorrel')");
    await choose(messyFile(practice.folder));
    assert.match(await page.textContent("legend"), /03\.02\.2026.*the day or the month\?/);
    assert.equal(await page.getAttribute("button.main", "aria-disabled"), "true");
    await pressOn("button:text-is('The day comes first')");
    await page.waitForSelector(".row-account");
    await standsOn(page, ".file h2:text-is('messy.csv')");
    assert.match(
      await page.textContent(".row-account"),
      /291 rows read = 287 to keep \+ 3 here already or repeated \+ 0 that contradict what is here \+ 1 not understood/,
    );
    const understood = (await page.textContent(".file")).replace(/\s+/g, " ");
    for (const said of [/line 109, column 18/, /found 'abc', expected/, /header.*line 5/, /unit.*mmol\/L/, /date order.*day first.*as told/, /LOW/]) {
      assert.match(understood, said);
    }
    await pressOn("button:text-is('Leave this file out')");
    await page.locator(".file").waitFor({ state: "detached" });
    await standsOn(page, "#files");
    assert.match(await page.textContent(".imports"), /Nothing was brought in for this client yet/);
  });

  test("chosen again it is kept, and once more it is nothing new (T1)", async () => {
    await choose(messyFile(practice.folder));
    await pressOn("button:text-is('The day comes first')");
    await standsOn(page, ".file h2");
    await pressOn("button:text-is('Keep 287 rows of this file')");
    await page.waitForSelector("text=287 rows of messy.csv kept.");
    await standsOn(page, ".told");
    await pressOn("a:text-is('See what these days say')");
    await standsOn(page, "h1:has-text('Client Sorrel')");
    await openPlace(page, "Bring in");
    await choose(messyFile(practice.folder));
    await pressOn("button:text-is('The day comes first')");
    await page.waitForSelector("text=Nothing new: all of it is here already.");
    assert.match(await page.textContent(".row-account"), /0 to keep \+ 290 here already or repeated/);
    await standsOn(page, ".file h2");
  });

  test("a walk trial: 5 pairs refused, 7 accepted, its first day told, drawn by lot with its seed (T13)", async () => {
    await page.keyboard.press("Escape");
    await standsOn(page, "h1");
    await page.keyboard.press("Escape");
    await standsOn(page, "a[data-client='c40']");
    await page.reload();
    await standsOn(page, "h1");
    await openClient(page, "c10");
    await openPlace(page, "What goes with it");
    await pressOn("button[aria-label='Plan this trial: Does a walk after dinner change the rise after dinner?']");
    await standsOn(page, "#trial-pairs");
    await page.waitForSelector(".trial-says:has-text('20 of this client')");
    assert.match(await page.textContent(".trial-says"), /pairs would show a difference/);
    await page.keyboard.type("5");
    await page.waitForSelector(".trial-says:has-text('0.0625')");
    assert.equal(await page.getAttribute("form.agree button.main", "aria-disabled"), "true");
    await page.keyboard.press("Backspace");
    await page.keyboard.type("7");
    await page.waitForSelector(".trial-says:has-text('0.0156')");
    assert.match(await page.textContent(".trial-says"), /the same meal, at the same time/);
    // Slower than the keys: the press waits for what the trial can show, and is not lost.
    await page.route(/trial-plan.*starts=2026-04-27/, async (route) => {
      await page.waitForTimeout(2000);
      await route.continue();
    });
    await tabTo(page, "#trial-starts");
    await page.keyboard.type("04272026"); // month, day, year, as this browser writes them
    assert.equal(await page.inputValue("#trial-starts"), "2026-04-27");
    await pressOn("button:text-is('Draw the order by lot and keep the trial')");
    await page.waitForSelector(".trial .trial-days");
    await standsOn(page, ".trial h4");
    assert.match(await page.textContent(".trial"), /27 April .*7 pairs of days.*Order by lot, seed \d+/s);
    assert.equal(await page.locator(".trial-days li").count(), 14);
    const { kept } = JSON.parse(await practice.command("trial", "c10", "--kept", "--json"));
    assert.equal(kept.length, 1);
  });

  test("its calendar for the client opens; stopping asks for a reason and gives the keyboard back (T13)", async () => {
    await tabTo(page, ".trial a[href$='/trials/1/page']");
    const [sheet] = await Promise.all([page.context().waitForEvent("page"), page.keyboard.press("Enter")]);
    await sheet.waitForLoadState();
    assert.match(await sheet.textContent("body"), /walk 15 minutes/i);
    await sheet.close();
    await page.bringToFront();
    await pressOn("button:text-is('Stop this trial')");
    await standsOn(page, "#stop-because");
    await pressOn("button:text-is('Cancel')");
    await standsOn(page, "button:text-is('Stop this trial')");
  });

  test("chest symptoms told: the walk is stopped and none is offered (T13)", async () => {
    await page.keyboard.press("Escape");
    await page.waitForURL("**/client/c10");
    await standsOn(page, "h1");
    await openPlace(page, "Who is this");
    await tabTo(page, "select[name='cautions.chest_symptoms']");
    await page.keyboard.type("y");
    assert.equal(await page.inputValue("select[name='cautions.chest_symptoms']"), "yes");
    await pressOn("button[aria-label='Keep: What to be careful about']");
    await page.waitForSelector(".facts:has(h2:text-is('What to be careful about')) :text('Kept.')");
    await page.goto(`${practice.address}/client/c10/goes-with`); // an address typed
    await page.waitForSelector(".trial:has-text(\"Don't go on with it now\")");
    const closed = page.locator("h3:text-is('Not offered now') + ul > li:has(h4:has-text('Does a walk after dinner'))");
    assert.match(await closed.textContent(), /[Cc]hest/);
    assert.equal(await page.locator("button[aria-label^='Plan this trial: Does a walk']").count(), 0);
  });

  test("nothing was pointed at, and no script failed on the way", async () => {
    assert.equal(await page.evaluate(() => globalThis.pointedAt), 0);
    assert.deepEqual(opened.errors, []);
  });
});

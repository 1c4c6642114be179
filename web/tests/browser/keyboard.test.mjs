// Tasks done by keyboard alone: every stop of the keyboard is seen, in reading order, and after an action it stands
// where the work goes on (WCAG 2.2: 2.1.1, 2.4.3, 2.4.7).
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { openClient, openPlace, signedInByKeyboard, standsOn, tabTo } from "./by_keyboard.mjs";
import { openedPage } from "./opened.mjs";

let opened;
let page;
let practice;

before(async () => {
  opened = await openedPage(/\b(401|404|409|422)\b/);
  ({ page, practice } = opened);
  await signedInByKeyboard(opened);
});
after(async () => opened?.close());

describe("By keyboard alone", { concurrency: false }, () => {
  test("sleep or dinner: asked, answered, and read on from the answer (T10)", async () => {
    await openClient(page, "c10");
    await openPlace(page, "What goes with it");
    await tabTo(page, "#ask-about");
    assert.equal(await page.inputValue("#ask-about"), "fasting");
    for (const cause of ["less sleep", "dinner three hours later"]) {
      const box = `.causes label:has-text('${cause}') input`;
      await tabTo(page, box);
      await page.keyboard.press("Space");
      assert.ok(await page.isChecked(box));
    }
    await tabTo(page, "button:text-is('Ask')");
    await page.keyboard.press("Enter");
    await page.waitForSelector(".answers .finding");
    // The keyboard is not lost, and the answer is said by its live region.
    assert.notEqual(await page.evaluate(() => document.activeElement.tagName), "BODY");
    assert.equal(await page.locator("[aria-live='polite'] .answers").count(), 1);
    const told = JSON.parse(await practice.command("ask", "c10", "--about", "fasting", "--because", "sleep,dinner-time", "--json"));
    const shown = await page.textContent(".answers");
    assert.equal(told.findings.length, 2);
    for (const { sentence } of told.findings) {
      assert.ok(shown.includes(sentence));
      assert.match(sentence, /95 % interval|can't tell/);
    }
    assert.match(shown, /It travelled together with the hour of dinner \(correlation -0\.\d+\).*They part on/);
    assert.match(shown, new RegExp(`${told.used} nights used, ${told.left_out.length} left out`));
    // What the answer folds away opens by a key too.
    await tabTo(page, ".answers details > summary");
    await page.keyboard.press("Enter");
    assert.ok(await page.locator(".answers details").first().evaluate((box) => box.open));
  });

  test("Escape leads back to the review and to the client's row in the list", async () => {
    await page.keyboard.press("Escape");
    await page.waitForURL("**/client/c10");
    await standsOn(page, "h1");
    await page.keyboard.press("Escape");
    await standsOn(page, "a[data-client='c10']");
  });

  test("the handout for low numeracy: looked at, opened as a page, closed again (T19)", async () => {
    await page.reload();
    await standsOn(page, "h1");
    await openClient(page, "c03");
    await openPlace(page, "What we agreed");
    const look = "button[aria-label^='Look at it: Handout']";
    await tabTo(page, look);
    await page.keyboard.press("Enter");
    await standsOn(page, ".paper-preview h3");
    const paper = JSON.parse(await practice.command("handout", "c03", "--json"));
    const sentences = paper.blocks.filter(({ kind }) => kind === "sentence").map(({ text }) => text);
    assert.ok(paper.numbers <= 3);
    assert.ok(paper.grade <= 6);
    assert.equal(await page.textContent(".paper-preview h3"), paper.title);
    const shown = await page.textContent(".paper-preview .paper");
    for (const sentence of sentences) assert.ok(shown.includes(sentence), sentence);
    assert.doesNotMatch(sentences.join(" "), /%|\d\.\d/);
    assert.equal(await page.locator(".paper-preview figure svg:visible").count(), 1);
    await tabTo(page, ".paper-preview a[href$='/handout/page']");
    const [sheet] = await Promise.all([page.context().waitForEvent("page"), page.keyboard.press("Enter")]);
    await sheet.waitForLoadState();
    for (const sentence of sentences) assert.ok((await sheet.textContent("body")).includes(sentence), sentence);
    await sheet.close();
    await tabTo(page, ".paper-preview button:text-is('Put it away')");
    await page.keyboard.press("Enter");
    await page.locator(".paper-preview").waitFor({ state: "detached" });
    await standsOn(page, look);
  });

  test("nothing was pointed at, and no script failed on the way", async () => {
    assert.equal(await page.evaluate(() => globalThis.pointedAt), 0);
    assert.deepEqual(opened.errors, []);
  });
});

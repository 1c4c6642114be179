// The diary by keyboard: a message pasted, a paper diary typed, entries corrected and struck out.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { keyboardOnce } from "./keyboard_once.mjs";
import { nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

const client = "c01";
let opened;
let practice;
let page;

const entries = () => page.locator(".entries > li");
const texts = async () => (await entries().allTextContents()).map((text) => text.replace(/\s+/g, " "));
const open = async (date) => {
  await page.goto(`${practice.address}/client/${client}/diary${date ? `/${date}` : ""}`);
  await page.waitForSelector("#diary-text:focus");
};

before(async () => {
  opened = await openedPage(/401|404|422/);
  ({ practice, page } = opened);
});

after(async () => {
  await opened?.close();
});

describe("the diary", { concurrency: false }, () => {
  test("opens on the client's own today with the keyboard in the text", async () => {
    await open();
    await page.waitForSelector("h1:has-text('Mon 20 April 2026')");
    await nothingSerious(page);
  });

  test("a message is shown as it is understood, with what is not sure marked, before it is kept", async () => {
    const before = await entries().count();
    await page.keyboard.type("6:10 porridge and banana, walked 20 min; dinner 7:30 zorbo");
    await page.waitForSelector(".understood li:nth-child(3)");
    const shown = page.locator(".understood > ol > li");
    assert.match(await shown.nth(0).textContent(), /Mon 20 April 06:10, food or drink: porridge and banana/);
    assert.match(await shown.nth(1).textContent(), /movement/);
    assert.match(await shown.nth(2).textContent(), /not sure/);
    assert.match(await shown.nth(2).textContent(), /no food found/);
    assert.equal(await entries().count(), before);
    await nothingSerious(page);
  });

  test("Enter asks once where something is not sure, then keeps; that is taken back by one press", async () => {
    await page.keyboard.press("Control+A");
    await page.keyboard.type("6:10 porridge and banana, walked 20 min; breakfast zorbo");
    const before = await entries().count();
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=Something is not sure. Press Enter once more");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=/3 entries kept/");
    await page.waitForFunction((n) => document.querySelectorAll(".entries > li").length === n + 3, before);
    assert.equal(await page.inputValue("#diary-text"), "");
    await page.getByRole("button", { name: "Take that back" }).press("Enter");
    await page.waitForFunction((n) => document.querySelectorAll(".entries > li").length === n, before);
  });

  test("a day of a paper diary is typed line by line by keyboard alone, and the next day reached", async () => {
    await open("2025-11-10");
    assert.equal(await entries().count(), 0);
    for (const line of ["7:30 2 slices of rye bread with cheese", "12:45 lentil soup", "18:00 walked 30 min", "22:30 slept 7h"]) {
      await page.keyboard.type(line);
      const before = await entries().count();
      await page.keyboard.press("Enter");
      // What is not sure is kept by a second press.
      await page.waitForSelector("text=/kept\\.|Press Enter once more/");
      if (await page.locator("text=Press Enter once more").count()) await page.keyboard.press("Enter");
      await page.waitForFunction((n) => document.querySelectorAll(".entries > li").length > n, before);
      await page.waitForSelector("#diary-text:focus");
    }
    const kept = await texts();
    assert.equal(kept.length, 4);
    assert.match(kept[0], /^07:30 food or drink 2 slices of rye bread with cheese/);
    assert.match(kept[1], /^12:45/);
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Shift+Tab");
    while (!(await page.evaluate(() => document.activeElement.textContent === "The day after"))) await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Enter");
    await page.waitForSelector("h1:has-text('Tue 11 November 2025')");
    await page.waitForSelector("#diary-text:focus");
  });

  test("the same line again is nothing new", async () => {
    await open("2025-11-10");
    await page.keyboard.type("12:45 lentil soup");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=/Nothing new|Press Enter once more/");
    if (await page.locator("text=Press Enter once more").count()) await page.keyboard.press("Enter");
    await page.waitForSelector("text=Nothing new: these entries are in the diary already.");
    assert.equal(await entries().count(), 4);
  });

  test("a food is searched and put into the text with its portion", async () => {
    await open("2025-11-11");
    await page.keyboard.type("8:00");
    await page.fill("#food-words", "rye bread");
    await page.waitForSelector(".foods button");
    const first = await page.locator(".foods button").first().textContent();
    assert.match(first, /bread.*: .+, \d+ g/i);
    await page.locator(".foods button").first().press("Enter");
    await page.waitForSelector("#diary-text:focus");
    assert.match(await page.inputValue("#diary-text"), /^8:00 .*rye/);
    const food = first.slice(0, first.indexOf(":"));
    await page.waitForSelector(`.understood li li:has-text("${food}")`);
  });

  test("an entry is corrected in a few keys; the correction is taken back", async () => {
    await open("2025-11-10");
    await page.getByRole("button", { name: /^Correct: lentil soup/ }).press("Enter");
    await page.waitForSelector(".correction input:focus");
    await page.keyboard.press("Control+A");
    await page.keyboard.type("13:05");
    await page.keyboard.press("Enter");
    await page.waitForSelector(".entries li:has-text('13:05')");
    assert.match((await texts())[1], /lentil soup.*\(corrected\)/);
    await page.waitForFunction(() => document.activeElement !== document.body);
    // The keyboard's place may have scrolled a link half below the bar at the top: no smaller target of the page's own.
    await page.evaluate(() => scrollTo(0, 0));
    await nothingSerious(page);
    await page.getByRole("button", { name: "Take that back" }).click();
    await page.waitForSelector(".entries li:has-text('12:45')");
    assert.equal(await entries().count(), 4);
  });

  test("a wrong time is told, and nothing changes; Escape leaves all as it is", async () => {
    await page.getByRole("button", { name: /^Correct: lentil soup/ }).press("Enter");
    await page.waitForSelector(".correction input:focus");
    await page.keyboard.press("Control+A");
    await page.keyboard.type("25:00");
    await page.keyboard.press("Enter");
    await page.waitForSelector(".wrong:has-text('This was not kept')");
    await page.keyboard.press("Escape");
    await page.waitForSelector(".correction", { state: "detached" });
    assert.match((await texts())[1], /12:45/);
  });

  test("an entry is struck out after a question", async () => {
    const ask = () => page.getByRole("button", { name: /^Strike out: walked/ }).press("Enter");
    assert.equal(await keyboardOnce(page, ".entries [role=alert]", true, ask), "Yes, strike it out");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelectorAll(".entries > li").length === 3);
    await page.waitForSelector("button.take-back:focus");
    await page.keyboard.press("Enter");
    await page.waitForFunction(() => document.querySelectorAll(".entries > li").length === 4);
    await page.waitForSelector("#entries-title:focus");
  });

  test("a very low that is kept is told at once", async () => {
    await open("2025-11-12");
    assert.equal(await page.locator(".escalations").count(), 0);
    await page.keyboard.type("14:10 finger-prick 2.6 mmol/L");
    await page.waitForSelector(".understood li:has-text('finger-prick')");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=/1 entry kept/");
    const told = page.locator(".escalations[role=alert]");
    await told.waitFor();
    assert.match(await told.textContent(), /Same day, client and prescriber.*12 November 14:10.*2\.6 mmol\/L/s);
    await nothingSerious(page);
    await page.getByRole("button", { name: "Take that back" }).click();
    await page.waitForSelector("text=Taken back.");
  });

  test("from within the text, Escape and one key each open a note and a promise", async () => {
    await open("2025-11-10");
    await page.keyboard.press("Escape");
    await page.keyboard.press("n");
    await page.waitForSelector("dialog[open] #note-text:focus");
    await page.keyboard.press("Escape");
    await page.waitForSelector("dialog[open]", { state: "detached" });
    await page.keyboard.press("p");
    await page.waitForSelector("dialog[open] h2:has-text('Promises')");
    await page.keyboard.press("Escape");
    await page.waitForSelector("h1:has-text('Diary of')");
  });

  test("a key pressed before the browser tells that the last words were closed opens the next ones", async () => {
    await page.waitForSelector("dialog[open]", { state: "detached" });
    await page.keyboard.press("n");
    await page.waitForSelector("dialog[open] #note-text:focus");
    await page.evaluate(() => {
      document.querySelector("dialog[open]").close();
      document.dispatchEvent(new KeyboardEvent("keydown", { key: "p", bubbles: true }));
    });
    await page.waitForSelector("dialog[open] h2:has-text('Promises')");
    await page.keyboard.press("Escape");
    await page.waitForSelector("dialog[open]", { state: "detached" });
  });

  test("a key that still reaches the field of the words just closed opens the next ones", async () => {
    await page.keyboard.press("n");
    await page.waitForSelector("dialog[open] #note-text:focus");
    await page.evaluate(() => {
      const field = document.querySelector("#note-text");
      document.querySelector("dialog[open]").close();
      field.dispatchEvent(new KeyboardEvent("keydown", { key: "p", bubbles: true }));
    });
    await page.waitForSelector("dialog[open] h2:has-text('Promises')", { timeout: 10000 });
    await page.keyboard.press("Escape");
    await page.waitForSelector("dialog[open]", { state: "detached" });
  });

  test("narrow, at 200 % zoom and dark", async () => {
    await standsEverywhere(opened, `/client/${client}/diary/2025-11-10`, ".understood li", async (at) => {
      await at.waitForSelector(".entries li");
      await at.fill("#diary-text", "8:10 porridge and banana; zorbo at noon");
    });
  });

  test("no script failed and the security policy stopped nothing", () => assert.deepEqual(opened.errors, []));
});

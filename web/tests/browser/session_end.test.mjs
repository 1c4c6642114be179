// A session ends by itself while something is being written: out of sight at once, and there again for the same coach
// alone.
import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";

const client = "c09";
let opened;
let page;

const endOfSession = async (act) => {
  await page.context().clearCookies();
  await act();
  await page.waitForSelector("text=The session has ended");
};
const signInAs = async (coach, passphrase) => {
  await page.fill("#coach", coach);
  await page.fill("#passphrase", passphrase);
  await page.press("#passphrase", "Enter");
  await page.waitForSelector("#passphrase", { state: "detached" });
};

before(async () => {
  opened = await openedPage(/401/);
  page = opened.page;
});

after(async () => {
  await opened?.close();
});

describe("a session that ends by itself", { concurrency: false }, () => {
  test("hides what is being written, and names no client", async () => {
    await page.goto(`${opened.practice.address}/client/${client}/diary/2025-11-10`);
    await page.waitForSelector("#diary-text:focus");
    await page.keyboard.type("18:10 walked 25 min");
    await endOfSession(() => page.keyboard.press("Enter"));
    assert.equal(await page.title(), "Sign in - Tracewright");
    assert.equal(await page.locator("#diary-text").isVisible(), false);
    assert.doesNotMatch(await page.locator("body").innerText(), /invented/);
    await page.keyboard.press("n");
    assert.equal(await page.locator("dialog[open]").count(), 0, "no key of the page works behind the sign-in");
    await nothingSerious(page);
  });

  test("gives it back to the same coach, with the keyboard where it was; it is kept then", async () => {
    await signInAs("o1", opened.practice.passphrase);
    await page.waitForSelector("#diary-text:focus");
    assert.equal(await page.inputValue("#diary-text"), "18:10 walked 25 min");
    assert.match(await page.title(), /^Diary of /);
    await page.keyboard.press("Enter");
    await page.waitForSelector(".entries li:has-text('18:10')");
    await nothingSerious(page);
  });

  test("so with notes that are open over the page", async () => {
    await page.goto(`${opened.practice.address}/client/${client}`);
    await page.waitForSelector(".review h1");
    await page.keyboard.press("n");
    await page.waitForSelector("#note-text:focus");
    await page.keyboard.type("told of a long week");
    await endOfSession(() => page.getByRole("button", { name: "Keep the note" }).click());
    await page.waitForSelector("dialog", { state: "hidden" });
    await signInAs("o1", opened.practice.passphrase);
    await page.waitForSelector("dialog[open] #note-text");
    assert.equal(await page.inputValue("#note-text"), "told of a long week");
    await page.getByRole("button", { name: "Keep the note" }).click();
    await page.waitForSelector("dialog li:has-text('told of a long week')");
    await page.keyboard.press("Escape");
    await page.waitForSelector("dialog[open]", { state: "detached" });
  });

  test("a half-written note that Escape closed stands there again", async () => {
    await page.keyboard.press("n");
    await page.waitForSelector("#note-text:focus");
    await page.keyboard.type("ask about the");
    await page.keyboard.press("Escape");
    await page.waitForSelector("dialog[open]", { state: "detached" });
    await page.keyboard.press("n");
    await page.waitForSelector("#note-text:focus");
    assert.equal(await page.inputValue("#note-text"), "ask about the");
    await page.keyboard.press("End");
    await page.keyboard.type(" late dinner");
    await page.getByRole("button", { name: "Keep the note" }).click();
    await page.waitForSelector("dialog li:has-text('ask about the late dinner')");
    assert.equal(await page.inputValue("#note-text"), "");
    await page.keyboard.press("Escape");
    await page.waitForSelector("dialog[open]", { state: "detached" });
    await page.keyboard.press("n");
    await page.waitForSelector("#note-text:focus");
    assert.equal(await page.inputValue("#note-text"), "", "what was kept is no draft any more");
    await page.keyboard.press("Escape");
    await page.waitForSelector("dialog[open]", { state: "detached" });
  });

  test("gives nothing of it to another coach", async () => {
    const own = join(opened.practice.folder, "own passphrase");
    writeFileSync(own, "another invented passphrase\n");
    await opened.practice.command("coach", "add", "--role", "reader", "o2", "Coach Sorrel (invented)");
    await opened.practice.command("--coach", "o1", "coach", "passphrase", "o2", "--new-passphrase-file", own);
    await page.goto(`${opened.practice.address}/client/${client}/diary/2025-11-10`);
    await page.waitForSelector("#diary-text:focus");
    await page.keyboard.type("19:40 for my eyes");
    await endOfSession(() => page.keyboard.press("Enter"));
    await signInAs("o2", "another invented passphrase");
    await page.waitForSelector("h1");
    assert.match(await page.textContent(".who"), /Coach Sorrel \(invented\) \(may look, not change\)/);
    assert.doesNotMatch(await page.evaluate(() => document.body.innerHTML + [...document.querySelectorAll("textarea")].map((one) => one.value)), /for my eyes/);
  });

  test("and a coach who signs out leaves nothing behind it", async () => {
    await page.getByRole("button", { name: "Sign out" }).click();
    await page.waitForSelector("#passphrase");
    assert.equal(await page.locator("#content").count(), 0);
    assert.equal(await page.locator("text=The session has ended").count(), 0);
  });

  test("no script failed on the way", () => {
    assert.deepEqual(opened.errors, []);
  });
});

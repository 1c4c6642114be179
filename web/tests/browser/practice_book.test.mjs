// The practice's book: a backup made, saved and restored; the recovery key tried; who did what, in words.
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { promisify } from "node:util";
import { fitsTheWidth, nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";
import { today } from "./practice.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

const program = (...words) => promisify(execFile)(join(process.env.TRACEWRIGHT_BUILD, "tracewright"), words);
let opened;
let practice;
let page;
let folder;
let saved; // the backup

const section = (title) => page.locator("section", { has: page.locator(`h2:text-is("${title}")`) });
const field = () => page.getByLabel("The recovery key, as it is written down");
const tryKey = async (key) => {
  await field().fill(key);
  await Promise.all([
    page.waitForResponse((reply) => reply.url().endsWith("/recovery-key/try")),
    page.getByRole("button", { name: "Try it" }).click(),
  ]);
  await page.waitForSelector("button:text-is('Try it')[aria-disabled='false']");
};
const keyIn = (text) => /(?:[0-9A-Z]{4} ?){13}[0-9A-Z]{4}/.exec(text)[0];
const restored = async (name, ...more) => {
  const opening = ["--practice", join(folder, name), "--passphrase-file", join(folder, "passphrase"), "--as-of", today];
  await program(...opening, "restore", saved, ...more);
  return (await program(...opening, "client", "list")).stdout;
};

before(async () => {
  opened = await openedPage(/\b(401|403|404|422|429)\b/);
  ({ practice, page } = opened);
  folder = join(practice.folder, "practice");
});
after(async () => opened?.close());

describe("Practice book", { concurrency: false }, () => {
  test("found from the list of clients by keyboard; says that there is no backup yet", async () => {
    await page.getByRole("link", { name: "Practice book: backup, recovery key, who did what" }).press("Enter");
    await page.waitForSelector("h1:has-text('Practice book')");
    await section("Backup").getByText("No backup was made yet.").waitFor();
    await section("Backup").getByText("No client was erased so far").waitFor();
    await section("Recovery key").getByText("It was not tried here yet.").waitFor();
    await page.waitForSelector(".deeds li");
    await nothingSerious(page);
  });

  test("a backup is made and saved under a dated name, leaves nothing beside the practice, and is told of", async () => {
    const there = readdirSync(folder);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Make a backup" }).press("Enter"),
    ]);
    assert.equal(download.suggestedFilename(), "practice-2026-04-20.backup");
    saved = join(practice.folder, "saved.backup");
    await download.saveAs(saved);
    await section("Backup").getByText("Made, opened again and checked. Your browser saves it as practice-2026-04-20.backup").waitFor();
    await section("Backup").getByText("The last one was made on Mon 20 April 2026, 07:00 UTC, by Coach Fern (invented).").waitFor();
    assert.deepEqual(readdirSync(folder), there);
    const [again] = await Promise.all([page.waitForEvent("download"), page.getByRole("link", { name: "Save it once more" }).click()]);
    assert.deepEqual(readFileSync(await again.path()), readFileSync(saved));
    await nothingSerious(page);
  });

  test("what was saved restores to the same list of clients", async () => {
    const bytes = readFileSync(saved);
    assert.equal(bytes.indexOf("SQLite format"), -1);
    assert.equal(bytes.indexOf("(invented)"), -1);
    assert.equal(await restored("again"), await practice.command("client", "list"));
  });

  test("the paper in the drawer is tried: mistyped, another's, and the right one; the field is emptied", async () => {
    const key = keyIn(readFileSync(join(folder, "recovery-key"), "utf8"));
    await page.getByText("Does the paper still open the practice?").click();
    await tryKey(key.slice(0, 5) + "!" + key.slice(6));
    await section("Recovery key").locator(".wrong:has-text('group 2')").waitFor();
    assert.notEqual(await field().inputValue(), "", "what could not be read stands to be mended");
    await tryKey(key.toLowerCase().replaceAll(" ", "-"));
    await page.getByText("Yes, it opens the practice.").waitFor();
    assert.equal(await field().inputValue(), "");
    await section("Recovery key").getByText("by Coach Fern (invented): it opened the practice.").waitFor();
    assert.ok(!(await page.content()).includes(key.slice(0, 9)));
    await nothingSerious(page);
    // Of another practice.
    const opening = ["--practice", join(practice.folder, "other"), "--passphrase-file", join(folder, "passphrase")];
    const other = keyIn((await program(...opening, "init", "Coach Nettle (invented)")).stdout);
    for (let i = 0; i < 5; i += 1) {
      await tryKey(other);
      await page.getByText("No, this key does not open the practice.").waitFor();
      assert.equal(await field().inputValue(), "");
    }
    await tryKey(other);
    await page.getByText("Too many tries. Wait five minutes").waitFor();
    assert.equal(await field().inputValue(), "");
    await section("Recovery key").getByText("that key did not open it.").waitFor();
    await nothingSerious(page);
  });

  test("who did what is told in words, with client and clock, and leads to the client", async () => {
    await page.reload();
    const first = page.locator(".deeds li").first();
    await first.getByText("Coach Fern (invented) tried a recovery key: it does not open the practice").waitFor();
    await first.getByText("Mon 20 April 2026, 07:00 UTC").waitFor();
    const told = await page.locator(".deeds").innerText();
    assert.match(told, /Mon 20 April 2026, 09:00\s+Coach Fern \(invented\) kept a file or diary entries: Client /);
    assert.match(told, /tried the recovery key: it opens the practice/);
    assert.match(told, /made a backup/);
    assert.doesNotMatch(told, /[a-z]_[a-z]/, "a stable word stands where words should");
    const link = page.locator(".deeds a").first();
    const name = await link.innerText();
    await link.click();
    await page.waitForSelector(`h1:has-text("${name.replace(/ \(invented\)/, "")}")`);
    await page.goBack();
    await page.waitForSelector(".deeds li");
  });

  test("earlier pages follow by keyboard to the making of the practice, and back", async () => {
    // So many that they fill more than two pages.
    await page.evaluate(async () => {
      const { token } = await (await fetch("/api/session")).json();
      const headers = { "Content-Type": "application/json", "X-Tracewright-Token": token };
      const body = JSON.stringify({ text: "Invented" });
      for (let i = 0; i < 150; i += 1) await fetch("/api/clients/c05/notes", { method: "POST", headers, body });
    });
    await page.reload();
    await page.locator(".deeds li", { hasText: "wrote a note: Client" }).first().waitFor();
    assert.equal(await page.locator(".deeds li").count(), 100);
    const earlier = page.getByRole("button", { name: "Earlier" });
    const newest = page.getByRole("button", { name: "The newest" });
    const turned = async (button) => {
      await Promise.all([page.waitForResponse((reply) => reply.url().includes("/api/audit")), button.press("Enter")]);
      await page.waitForSelector(".deeds li");
      assert.equal(await page.evaluate(() => document.activeElement.textContent), "Who did what");
      return page.locator(".deeds li").allInnerTexts();
    };
    const first = await page.locator(".deeds li").allInnerTexts();
    const all = [...first];
    while ((await earlier.count()) > 0) all.push(...(await turned(earlier)));
    assert.equal(all.filter((line) => line.includes("wrote a note")).length, 150);
    assert.equal(all.filter((line) => line.includes("made the practice")).length, 1);
    assert.match(all.at(-1), /made the practice/);
    await page.getByText("These are the first lines.").waitFor();
    await nothingSerious(page);
    assert.deepEqual(await turned(newest), first);
    assert.equal(await newest.count(), 0);
  });

  test("of one client, from their shares: nobody else's, their clock, looks as they come", async () => {
    await page.goto(`${practice.address}/client/c09/shares`);
    await page.getByRole("link", { name: "Who in the practice looked at this client, and did what" }).click();
    await page.waitForSelector("h1:has-text('Who did what: ')");
    await page.locator(".deeds li", { hasText: "looked at the shares" }).first().waitFor();
    assert.equal(await page.locator(".deeds a").count(), 0);
    const lines = await page.locator(".deeds li").allInnerTexts();
    assert.ok(lines.every((line) => !line.includes("UTC")), lines.join("\n"));
    await page.waitForSelector(".age, .last-reading, :text('The last reading')");
    await nothingSerious(page);
    await fitsTheWidth(page);
  });

  test("after an erasure the list of the erased is saved, and a restore of the older backup leaves them out", async () => {
    await page.goto(`${practice.address}/client/c02/facts`);
    await page.getByText("Take their data along, or leave").waitFor();
    await page.locator("summary:has-text('Erase')").click();
    await page.locator("input[name=none]").check();
    await page.getByLabel("Write c02 to erase").fill("c02");
    await page.getByRole("button", { name: "Erase for good" }).click();
    await page.waitForSelector("h1:has-text('Who needs me')");
    await page.goto(`${practice.address}/practice-book`);
    await section("Backup").getByText("One client was erased.").waitFor();
    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("link", { name: "Save the list of the erased" }).click()]);
    assert.equal(download.suggestedFilename(), "practice-2026-04-20.backup.erased");
    const list = join(practice.folder, "list.erased");
    await download.saveAs(list);
    assert.match(await restored("without-the-list"), /\bc02\b/);
    const left = await restored("with-the-list", "--erased", list);
    assert.doesNotMatch(left, /\bc02\b/);
    assert.match(left, /\bc01\b/);
    await page.locator(".deeds li", { hasText: "erased a client" }).waitFor();
  });

  test("narrow, at 200 % zoom and dark", async () => {
    await standsEverywhere(opened, "/practice-book", ".deeds li", (on) => on.getByText("Does the paper still open the practice?").click());
    await standsEverywhere(opened, "/client/c09/who-did-what", ".deeds li");
  });

  test("no script failed and the security policy stopped nothing", () => assert.deepEqual(opened.errors, []));
});

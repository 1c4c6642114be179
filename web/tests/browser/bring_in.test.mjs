// Bringing files in by clicking and typing, on the invented practice (tasks T1 and T2).
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { messyFile } from "./messy_file.mjs";
import { nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

let opened;
let practice;
let page;

/** All that is kept of a client, byte for byte. */
async function exported(handle) {
  const out = join(practice.folder, `export-${handle}`);
  await practice.command("client", "export", handle, "--out", out);
  return readdirSync(out).sort().map((name) => readFileSync(join(out, name), "utf8")).join("\n");
}

const account = () => page.textContent(".row-account");
const open = (client) => page.goto(`${practice.address}/client/${client}/bring-in`);

before(async () => {
  opened = await openedPage(/401|404|422/);
  ({ practice, page } = opened);
  await practice.command("client", "add", "Client Sorrel (invented)", "--handle", "c40");
});

after(async () => {
  await opened?.close();
});

describe("Bring in", { concurrency: false }, () => {
  test("a client without readings leads to it", async () => {
    await page.goto(`${practice.address}/client/c40`);
    await page.click("a:has-text('Bring in the first file')");
    await page.waitForSelector("h1:has-text('Bring in: Client Sorrel')");
    await page.waitForSelector("text=Nothing was brought in for this client yet.");
    await nothingSerious(page);
  });

  test("a messy file: one question with a sample row, by keyboard alone (T1)", async () => {
    await page.setInputFiles("#files", messyFile(practice.folder));
    await page.waitForSelector("legend");
    assert.match(await page.textContent("legend"), /03\.02\.2026.*the day or the month\?/);
    assert.equal(await page.locator("fieldset").count(), 1);
    assert.match(await page.textContent(".questions"), /Our guess: day first/);
    // Nothing may be kept before it is answered.
    assert.equal(await page.locator("button.main").getAttribute("aria-disabled"), "true");
    await nothingSerious(page);
    await page.getByRole("button", { name: "The day comes first" }).focus();
    await page.keyboard.press("Enter");
    await page.waitForSelector(".row-account");
  });

  test("every row accounted for, each guess with its reason, before anything is kept (T1)", async () => {
    assert.equal(
      (await account()).trim(),
      "291 rows read = 287 to keep + 3 here already or repeated + 0 that contradict what is here + 1 not understood.",
    );
    const text = await page.textContent(".file");
    assert.match(text, /line 109, column 18/);
    assert.match(text, /found 'abc', expected/);
    for (const said of [/header.*line 5/, /unit.*mmol\/L.*certain/, /decimal mark.*,.*as in '7,/, /date order.*day first.*as told/]) {
      assert.match(text.replace(/\s+/g, " "), said);
    }
    assert.match(text, /2026-02-03 00:00/);
    assert.match(text, /LOW/);
    assert.match(await practice.command("client", "list"), /c40/);
    assert.equal(await page.locator(".imports .plain-list li").count(), 0);
    await nothingSerious(page);
  });

  test("leaving it out keeps nothing; kept, it is told and shown (T1)", async () => {
    await page.getByRole("button", { name: "Leave this file out" }).click();
    assert.equal(await page.locator(".file").count(), 0);
    await page.setInputFiles("#files", join(practice.folder, "messy.csv"));
    await page.getByRole("button", { name: "The day comes first" }).click();
    await page.getByRole("button", { name: "Keep 287 rows of this file" }).click();
    await page.waitForSelector("text=287 rows of messy.csv kept.");
    assert.match(await account(), /287 kept/);
    await page.waitForSelector(".imports li:has-text('messy.csv')");
    assert.match(await page.textContent(".imports"), /287 of 291 rows kept/);
  });

  test("the same file once more is nothing new (T1)", async () => {
    await open("c40");
    await page.setInputFiles("#files", join(practice.folder, "messy.csv"));
    await page.getByRole("button", { name: "The day comes first" }).click();
    await page.waitForSelector("text=Nothing new: all of it is here already.");
    assert.match(await account(), /0 to keep \+ 290 here already or repeated/);
    assert.equal((await page.textContent("button.main")).trim(), "Nothing to keep");
  });

  test("another client's file is asked about; nothing changes unless told so (T2)", async () => {
    const before = await exported("c02");
    await open("c02");
    const files = join(practice.files, "alder");
    const readings = readdirSync(files).filter((name) => /\.(csv|txt)$/.test(name));
    const theirs = readings.find((name) => readFileSync(join(files, name), "latin1").length > 20_000);
    await page.setInputFiles("#files", join(files, theirs));
    await page.waitForSelector("legend:has-text(\"Is this this client's file?\")");
    assert.match(await account(), /= 0 to keep/);
    await page.waitForSelector("button:has-text('Yes, this is the file of')");
    await nothingSerious(page);
    await page.getByRole("button", { name: "No: leave it out" }).click();
    assert.equal(await page.locator(".file").count(), 0);
    assert.equal(await exported("c02"), before);
  });

  test("an import is taken back whole, after a question (T2)", async () => {
    await open("c40");
    const line = page.locator(".imports li", { hasText: "messy.csv" });
    await line.getByRole("button", { name: "Take back" }).click();
    assert.match(await line.textContent(), /Take back the 287 rows of messy\.csv\?/);
    await line.getByRole("button", { name: "Yes, take it back" }).click();
    await page.waitForSelector("text=Nothing was brought in for this client yet.");
    await page.goto(`${practice.address}/client/c40`);
    await page.waitForSelector(".empty");
  });

  test("what is no table is said, with what was expected", async () => {
    await open("c40");
    await page.setInputFiles("#files", { name: "words.txt", mimeType: "text/plain", buffer: Buffer.from("only words\nand more\n") });
    await page.waitForSelector(".file .wrong");
    assert.match(await page.textContent(".file .wrong"), /found .+, expected /);
    await nothingSerious(page);
  });

  test("dropped files are taken too", async () => {
    await open("c40");
    await page.waitForSelector(".drop");
    await page.evaluate(() => {
      const dropped = new DataTransfer();
      dropped.items.add(new File(["Time,Glucose mg/dL\n2026-04-01 08:00,120\n2026-04-01 08:05,124\n"], "dropped.csv"));
      document.querySelector(".drop").dispatchEvent(new DragEvent("drop", { dataTransfer: dropped, bubbles: true, cancelable: true }));
    });
    await page.waitForSelector("section[aria-label='dropped.csv'] .row-account");
    assert.match(await account(), /2 rows read = 2 to keep/);
  });

  test("narrow, at 200 % zoom and dark", async () => {
    await standsEverywhere(opened, "/client/c40/bring-in", ".row-account", async (at) => {
      await at.setInputFiles("#files", join(practice.folder, "messy.csv"));
      await at.getByRole("button", { name: "The day comes first" }).click();
    });
  });

  test("no script failed and the security policy stopped nothing", () => assert.deepEqual(opened.errors, []));
});

// How the practice writes dates, times of day and glucose: set by keyboard, followed everywhere, undone.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

let opened;
let practice;
let page;

const months = "January|February|March|April|May|June|July|August|September|October|November|December";
const dayFirst = new RegExp(`\\b\\d{1,2} (${months})\\b`);
const clock24 = /\b\d{2}:\d{2}\b(?! ?[ap]m)/;
const kept = () => page.getByText("Kept. Everything is written so from now on.").waitFor();
const wordsOf = (html) => html.replace(/<style.*?<\/style>|<[^>]*>/gs, " ");
// What the server words: the page's own text without what a coach or client wrote.
const shown = async (path, ready) => {
  await page.goto(practice.address + path);
  await page.waitForSelector(ready);
  return (await page.locator("main").innerText()).replace(/dinner (done by 18:30|at 21:00)|21:00 vs 18:00/g, "");
};

before(async () => {
  opened = await openedPage(/401|404|422/);
  ({ practice, page } = opened);
});

after(async () => {
  await opened?.close();
});

describe("How we write", { concurrency: false }, () => {
  test("found from the list of clients; month first and twelve hours by keyboard", async () => {
    await page.getByRole("link", { name: "How we write dates and times" }).press("Enter");
    await page.waitForSelector("h1:has-text('How we write')");
    await nothingSerious(page);
    assert.equal(await page.getByLabel("Day first: Mon 20 April 2026").isChecked(), true);
    await page.getByLabel("Day first: Mon 20 April 2026").press("ArrowDown");
    await kept();
    await page.waitForSelector("input[value='month first']:checked");
    await page.getByLabel("12 hours: 2:40 pm").press("Space");
    await page.waitForSelector("input[value='12']:checked");
    await nothingSerious(page);
  });

  test("every place follows", async () => {
    const places = {
      "/": "li a[data-client]",
      "/client/c09": ".review .days a",
      "/client/c09/day/2026-04-18": ".plot canvas",
      "/client/c09/trust": ".trust h2",
      "/client/c09/diary/2026-04-18": ".entries li",
      "/client/c09/plan": ".papers",
      "/client/c05/helped": ".change-helped",
      "/client/c05/sensor": ".finding",
      "/client/c10/goes-with": ".trials",
      "/client/c09/shares": "#share-until",
      "/client/c09/bring-in": ".imports li",
    };
    for (const [path, ready] of Object.entries(places)) {
      const text = await shown(path, ready);
      assert.doesNotMatch(text, dayFirst, path);
      assert.doesNotMatch(text, clock24, path);
    }
    assert.match(await shown("/client/c09/day/2026-04-18", ".plot canvas"), /Sat April 18, 2026/);
  });

  test("papers and commands say the same", async () => {
    await page.goto(`${practice.address}/client/c09/plan`);
    const papers = await page.evaluate(async () => {
      const ask = async (path) => (await fetch(`/api/clients/c09/${path}`)).text();
      return Promise.all(["papers/handout/page", "papers/talk/page", "review.html"].map(ask));
    });
    for (const text of papers.map(wordsOf)) {
      assert.match(text, new RegExp(`[A-Z][a-z]{2} (${months}) \\d`));
      assert.doesNotMatch(text.replace(/8:10|dinner (done by 18:30|at 21:00)/g, ""), dayFirst);
    }
    const out = join(practice.folder, "review-c09");
    await practice.command("review", "c09", "--out", out);
    assert.match(readFileSync(join(out, "review.html"), "utf8"), new RegExp(`(${months}) \\d{1,2}, \\d{1,2}:\\d{2} [ap]m`));
  });

  test("a diary is typed in either way", async () => {
    await page.goto(`${practice.address}/client/c09/diary/2026-04-18`);
    await page.waitForSelector(".entries li");
    const box = page.getByLabel("What happened, as it was written or told");
    await box.fill("2:40 pm apple. 15:10 tea");
    await page.waitForSelector("text=/2:40 pm/");
    await page.waitForSelector("text=/3:10 pm/");
  });

  test("undone at once, and everything is as before", async () => {
    await page.goto(`${practice.address}/writing`);
    await page.getByLabel("mg/dL", { exact: true }).click();
    await kept();
    await page.waitForSelector("input[value='mg/dL']:checked");
    await page.getByRole("button", { name: "Undo" }).click();
    await page.waitForSelector("input[value='mmol/L']:checked");
    await page.getByLabel(/^Day first/).click();
    await page.waitForSelector("input[value='day first']:checked");
    await page.getByLabel(/^24 hours/).click();
    await page.waitForSelector("input[value='24']:checked");
    assert.match(await shown("/client/c09/day/2026-04-18", ".plot canvas"), /Sat 18 April 2026/);
  });

  test("narrow, at 200 % zoom and dark", () => standsEverywhere(opened, "/writing", ".writing fieldset"));

  test("no script failed and the security policy stopped nothing", () => assert.deepEqual(opened.errors, []));
});

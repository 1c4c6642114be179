// How far the data can be trusted, and stretches marked and unmarked (tasks T3, T4 and T8 as far as
// the place goes).
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

let opened;
let practice;
let page;

/** Readings each `minutes`, from 10 April 00:00 on and so many minutes later, in the unit given. */
function wear(name, unit, days, minutes, later = 0) {
  const lines = [`Time,Glucose ${unit}`];
  for (let i = 0; i < (days * 24 * 60) / minutes; i += 1) {
    const at = new Date(Date.UTC(2026, 3, 10) + (i * minutes + later) * 60_000);
    const mg = 120 + 40 * Math.sin((i * minutes + later) / 90) + 2 * later;
    lines.push(`${at.toISOString().slice(0, 16).replace("T", " ")},${unit === "mg/dL" ? Math.round(mg) : (mg / 18.016).toFixed(1)}`);
  }
  const file = join(practice.folder, name);
  writeFileSync(file, lines.join("\n"));
  return file;
}

before(async () => {
  opened = await openedPage(/401|404|422/);
  ({ practice, page } = opened);
  await practice.command("client", "add", "Client Sorrel (invented)", "--handle", "c40", "--zone", "Europe/Berlin");
  await practice.command("bring-in", "c40", wear("eight.csv", "mg/dL", 8, 5));
});

after(async () => {
  await opened?.close();
});

describe("Can I trust it", { concurrency: false }, () => {
  test("eight days are told as what they are (T8)", async () => {
    await page.goto(`${practice.address}/client/c40/trust`);
    await page.waitForSelector("h1:has-text('Can I trust it')");
    const text = await page.textContent(".trust");
    assert.match(text, /The sensor saw .* over \d civil days/);
    assert.match(text, /not settled: .*21 days/);
    assert.match(text, /warm-up/);
    assert.match(text, /The last reading was/);
    await nothingSerious(page);
  });

  test("a stretch is marked; both answers stand side by side; it is taken back", async () => {
    const answers = () => page.locator("table:has(caption:text-is('With all readings, and without what is marked')) tbody tr").allTextContents();
    const before = await answers();
    await page.getByLabel("From", { exact: true }).fill("2026-04-11T08:00");
    await page.getByLabel("To", { exact: true }).fill("2026-04-13T20:00");
    await page.getByLabel("Why it is suspect").fill("slept on the sensor");
    await page.getByRole("button", { name: "Mark it", exact: true }).click();
    const stretch = "li:has-text('Sat 11 April 08:00 to Mon 13 April 20:00')";
    await page.waitForSelector(stretch);
    assert.match(await page.textContent(stretch), /marked by a coach/);
    await page.waitForSelector("li:has-text('marked and still counted: by a coach, 1 stretch, 60 h in all')");
    assert.notDeepEqual(await answers(), before);
    await nothingSerious(page);
    await page.getByRole("button", { name: "Take this mark back" }).click();
    await page.waitForSelector("li:has-text('marked by a coach')", { state: "detached" });
    assert.deepEqual(await answers(), before);
  });

  test("what the program marked is counted after all, with a reason, and marked again", async () => {
    const warmUp = page.locator("li", { hasText: "warm-up" }).first();
    await warmUp.getByLabel("Why").fill("agrees with two finger-pricks");
    await warmUp.getByRole("button", { name: /^Count it after all: warm-up/ }).press("Enter");
    await page.waitForSelector("li:has-text('counted after all')");
    assert.match(await warmUp.textContent(), /Told: agrees with two finger-pricks/);
    await warmUp.getByRole("button", { name: "Mark it again" }).click();
    await page.waitForSelector("li:has-text('counted after all')", { state: "detached" });
  });

  test("two sensors at once: one is counted, and it is said which and why (T3)", async () => {
    await practice.command("client", "add", "Client Tansy (invented)", "--handle", "c41", "--zone", "Europe/Berlin");
    await practice.command("bring-in", "c41", wear("five.csv", "mg/dL", 10, 5));
    await practice.command("bring-in", "c41", wear("fifteen.csv", "mg/dL", 10, 15, 2));
    await page.goto(`${practice.address}/client/c41/trust`);
    await page.waitForSelector("text=/Two sensors at once from .* is counted because/");
    const box = page.locator(".at-once");
    assert.match(await box.textContent(), /wear 1 is counted because it reports more often/);
    assert.match(await box.textContent(), /wear 2 read .* on average \(.* days put it .*95 % of \d+ pairs lie/);
    await nothingSerious(page);
  });

  test("the other one is counted instead: numbers and caveat change, others see it, and it is undone (T3)", async () => {
    const box = page.locator(".at-once");
    const answers = () => page.locator("table:has(caption:text-is('With all readings, and without what is marked')) tbody tr").allTextContents();
    const before = await answers();
    await box.getByRole("button", { name: "Count wear 2 instead" }).press("Enter");
    await page.waitForSelector("text=wear 2 is counted because a coach chose it");
    assert.notDeepEqual(await answers(), before);
    assert.match(await page.textContent(".trust"), /Two sensors at once from .* wear 2 is counted because a coach chose it/);
    await box.getByText("wear 2 is counted now.").waitFor();
    await nothingSerious(page);
    // The command says the same, for it is the coach's choice that is kept.
    const out = join(practice.folder, "review-c41");
    await practice.command("review", "c41", "--out", out);
    assert.match(readFileSync(join(out, "review.html"), "utf8"), /wear 2 is counted because a coach chose it/);
    await box.getByRole("button", { name: "Undo" }).press("Enter");
    await page.waitForSelector("text=wear 1 is counted because it reports more often");
    assert.deepEqual(await answers(), before);
    await box.getByRole("button", { name: "Count wear 2 instead" }).click();
    await box.getByRole("button", { name: "Leave it to the rule" }).click();
    await page.waitForSelector("text=wear 1 is counted because it reports more often");
    await box.getByRole("button", { name: "Undo" }).click();
    await page.waitForSelector("text=wear 2 is counted because a coach chose it");
  });

  test("two units: each edge counts in the unit it was reported in, one unit is shown (T4)", async () => {
    await practice.command("client", "add", "Client Bracken (invented)", "--handle", "c42", "--zone", "Europe/Berlin");
    await practice.command("bring-in", "c42", wear("mmol.csv", "mmol/L", 8, 5));
    await page.goto(`${practice.address}/client/c42/trust`);
    await page.waitForSelector("h1:has-text('Can I trust it')");
    const text = await page.textContent(".trust");
    assert.match(text, /mmol\/L/);
    assert.doesNotMatch(text, /\d mg\/dL(?! ?\))/);
  });

  test("narrow, at 200 % zoom and dark", async () => {
    await standsEverywhere(opened, "/client/c09/trust", "h1:has-text('Can I trust it')");
  });

  test("no script failed and the security policy stopped nothing", () => assert.deepEqual(opened.errors, []));
});

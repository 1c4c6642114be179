// What goes with it: questions in words, meals, and trials set up, told and read.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

let opened;
let page;
let practice;
const at = async (client) => {
  await page.goto(`${practice.address}/client/${client}/goes-with`);
  await page.waitForSelector(".trials");
};

before(async () => {
  opened = await openedPage(/\b(401|404|409|422)\b/);
  ({ page, practice } = opened);
});
after(async () => opened?.close());

describe("What goes with it", { concurrency: false }, () => {
  test("a question in words gets an answer with its interval for each cause (T10)", async () => {
    await at("c10"); // short nights and late dinners that travel together
    await page.selectOption("#ask-about", "fasting");
    await page.getByLabel(/less sleep/).check();
    await page.getByRole("checkbox", { name: /dinner three hours later/ }).check();
    await page.getByRole("button", { name: "Ask", exact: true }).press("Enter");
    await page.waitForSelector(".answers .finding");
    const told = JSON.parse(await practice.command("ask", "c10", "--about", "fasting", "--because", "sleep,dinner-time", "--json"));
    const shown = await page.textContent(".answers");
    for (const finding of told.findings) {
      assert.ok(shown.includes(finding.question));
      assert.ok(shown.includes(finding.sentence));
      assert.match(finding.sentence, /95 % interval|can't tell/);
    }
    assert.match(shown, /It travelled together with the hour of dinner \(correlation -0\.\d+\).*They part on/);
    assert.match(shown, /What goes together need not come from one another/);
    assert.match(shown, new RegExp(`${told.used} nights used, ${told.left_out.length} left out`));
  });

  test("nothing chosen is said, and the causes offered are those that can come before", async () => {
    await at("c08");
    await page.getByRole("button", { name: "Ask", exact: true }).click();
    await page.waitForSelector("text=Choose at least one thing it may go with.");
    assert.equal(await page.getByLabel(/movement after the meal/).count(), 0);
    await page.selectOption("#ask-about", "dinner");
    assert.equal(await page.getByLabel(/movement after the meal/).count(), 1);
  });

  test("foods in groups, what was eaten once in the can't-tell box, none good or bad (T11)", async () => {
    await at("c02");
    await page.waitForSelector("table:has-text('rank between')");
    const meals = JSON.parse(await practice.command("meals", "c02", "--json"));
    const rows = page.locator("table:has-text('rank between') tbody tr");
    assert.deepEqual(await rows.locator("td").first().textContent(), meals.comparison.foods[0].food);
    assert.equal(await rows.count(), meals.comparison.foods.length);
    for (const sentence of meals.comparison.sentences) assert.ok((await page.textContent("article")).includes(sentence));
    if (meals.comparison.seen_once.length > 0) {
      assert.match(await page.textContent(".cannot-tell"), new RegExp(meals.comparison.seen_once[0]));
    }
    assert.doesNotMatch(await page.textContent("article"), /\b(good|bad) food/i);
  });

  test("rises without an entry are asked about, never written (T12)", async () => {
    for (const client of ["c01", "c02", "c05", "c06", "c07", "c10", "c12"]) {
      const { ask_about } = JSON.parse(await practice.command("meals", client, "--json"));
      if (ask_about.length === 0) continue;
      await at(client);
      await page.waitForSelector("h3:has-text('Ask about')");
      const asked = page.locator("h3:has-text('Ask about') ~ ul").first().locator("li");
      assert.equal(await asked.count(), ask_about.length);
      assert.match(await asked.first().textContent(), /: up by \d+(\.\d)? m(g\/dL|mol\/L) within an hour$/);
      return;
    }
    assert.fail("the invented practice has such a rise");
  });

  test("finger-pricks before and two hours after: the pairs used, the others with why (T15)", async () => {
    for (const client of ["c05", "c06", "c07", "c10", "c12", "c01", "c02"]) {
      const { finger_prick_pairs } = JSON.parse(await practice.command("meals", client, "--json"));
      if (finger_prick_pairs.length === 0) continue;
      await at(client);
      const table = page.getByRole("region", { name: "Finger-pricks before and two hours after" });
      await table.waitFor();
      assert.equal(await table.locator("tbody tr").count(), finger_prick_pairs.length);
      assert.equal(await table.locator("tr:has-text('left out:')").count(), finger_prick_pairs.filter(({ used }) => !used).length);
      if (finger_prick_pairs.some(({ used }) => used)) assert.match(await page.textContent("article"), /A meter may be off by 15 %/);
      return;
    }
    assert.fail("the invented practice has such pairs");
  });

  test("a walk trial is planned by keyboard: 5 pairs refused, 7 accepted, by lot with its seed (T13)", async () => {
    await at("c10");
    const plan = page.getByRole("button", { name: "Plan this trial: Does a walk after dinner change the rise after dinner?" });
    await plan.focus();
    await page.keyboard.press("Enter");
    await page.waitForSelector(".trial-says:has-text('dinners')");
    assert.match(await page.textContent(".trial-says"), /from 20 of this client's dinners/);
    assert.match(await page.textContent(".trial-says"), /pairs would show a difference/);
    await page.getByLabel("Pairs of days").fill("5");
    await page.waitForSelector(".trial-says:has-text('0.0625')");
    assert.equal(await page.getByRole("button", { name: "Draw the order by lot and keep the trial" }).getAttribute("aria-disabled"), "true");
    await page.getByLabel("Pairs of days").fill("7");
    await page.waitForSelector(".trial-says:has-text('0.0156')");
    assert.match(await page.textContent(".trial-says"), /the same meal, at the same time/);
    // The order is not told before it is kept: nobody draws until it pleases.
    assert.equal(await page.locator(".trial-days").count(), 0);
    await page.getByRole("button", { name: "Draw the order by lot and keep the trial" }).press("Enter");
    await page.waitForSelector(".trial .trial-days");
    assert.match(await page.textContent(".trial"), /Order by lot, seed \d+/);
    assert.equal(await page.locator(".trial-days li").count(), 14);
    const kept = JSON.parse(await practice.command("trial", "c10", "--kept", "--json")).kept;
    assert.equal(kept.length, 1);
    // One at a time.
    assert.match(await page.textContent(".trials"), /with two at once nothing can be learnt/);
    assert.equal(await page.getByRole("button", { name: /Plan this trial/ }).count(), 0);
  });

  test("its calendar is a page for the client and a file without a name (T13)", async () => {
    const get = (path) => page.evaluate(async (where) => {
      const reply = await fetch(where);
      return { status: reply.status, type: reply.headers.get("content-type"), text: await reply.text() };
    }, `/api/clients/c10/trials/1/${path}`);
    const file = await get("calendar");
    assert.match(file.type, /text\/calendar/);
    assert.equal(file.text.match(/BEGIN:VEVENT/g).length, 14);
    assert.doesNotMatch(file.text, /Rowan/);
    assert.equal((await get("print")).status, 200);
    assert.match((await get("page")).text, /walk 15 minutes/i);
  });

  test("before the end there is no verdict and no number (T14)", async () => {
    const early = await page.evaluate(async () => (await fetch("/api/clients/c10/trials/1")).json());
    assert.equal(early.reading.ended, false);
    assert.equal(early.reading.as_allotted, null);
    assert.equal(early.figure, null);
  });

  test("a trial is stopped only with a reason, and then gets no verdict", async () => {
    await page.click("button:has-text('Stop this trial')");
    await page.getByLabel("Why it is stopped").fill("a cold (invented)");
    await page.click("button:has-text('Stop it for good')");
    await page.waitForSelector(".trial:has-text('was stopped')");
    assert.match(await practice.command("trial", "c10", "--kept"), /stopped/);
  });

  test("a client whose gate is closed is not offered a walk, and is told why (T13)", async () => {
    await at("c09");
    assert.equal(await page.getByRole("button", { name: /Plan this trial: Does a walk after dinner/ }).count(), 0);
    const closed = page.locator("h3:has-text('Not offered now') + ul > li:has(h4:has-text('Does a walk after dinner'))");
    assert.match(await closed.textContent(), /beta-blocker|Lows were seen/);
  });

  test("a trial that has ended is told day by day and read: as allotted first, p and interval as the command's (T14)", async () => {
    await practice.commandOn("2026-03-19T07:00Z", "trial", "c06", "--question", "walk-after-dinner", "--pairs", "7", "--keep");
    await at("c06");
    await page.waitForSelector(".trial");
    const first = page.locator(".trial-days select").first();
    await page.locator(".trial summary:has-text('Days, and what was done')").click();
    await first.selectOption("neither");
    await page.waitForSelector("text=: told.");
    const [{ number }] = JSON.parse(await practice.command("trial", "c06", "--kept", "--json")).kept;
    const told = JSON.parse(await practice.command("trial", "c06", "--number", String(number), "--json")).reading;
    assert.equal(told.days.find(({ date }) => date === "2026-03-21").done, "neither");
    await page.waitForFunction((sentence) => document.querySelector(".trial .finding")?.textContent.includes(sentence), told.finding.sentence);
    const row = page.locator("table:has(caption:text-is('What it shows')) tbody tr").first();
    assert.match(await row.textContent(), /^As the lot said/);
    assert.match(await row.textContent(), new RegExp(told.as_allotted.p.toFixed(4)));
    assert.equal(await page.locator(".trial figure svg").count(), 1);
    assert.match(await page.textContent(".trial"), /Report \(PDF\)/);
  });

  test("everywhere: axe by day and night, one heading, a phone's width and 200 % zoom", async () => {
    await standsEverywhere(opened, "/client/c06/goes-with", ".trial .finding");
  });

  test("no script failed and the security policy stopped nothing on the way", () => assert.deepEqual(opened.errors, []));
});

// Did it help: before and after, laboratory, the way to remission, the story so far.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

let opened;
let page;
let practice;
const at = (client) => page.goto(`${practice.address}/client/${client}/helped`);

before(async () => {
  opened = await openedPage(/\b(401|404|409|422)\b/);
  ({ page, practice } = opened);
});
after(async () => opened?.close());

describe("Did it help", { concurrency: false }, () => {
  test("each change with the wears before and after it, the medicine named (T16)", async () => {
    await at("c05"); // metformin stopped between two wears
    await page.waitForSelector(".change-helped");
    const change = await page.textContent(".change-helped");
    assert.match(change, /keep the evening walk and the smaller dinner/);
    assert.match(change, /In range .* before .* after .*95 % interval/);
    assert.match(change, /Medicines changed between: metformin stopped .* Habits can't take the credit/);
    assert.match(change, /chosen for being bad/);
  });

  test("two wears of other kinds are compared with the sensors' own error in the interval (T16)", async () => {
    await at("c06");
    await page.waitForSelector("table:has-text('in range a day')");
    const before = await page.textContent("section:has(> h2:text-is('Compare two wears')) .finding");
    assert.match(before, /own error alone makes up to/);
    await page.selectOption("#wear-before", "1");
    await page.selectOption("#wear-after", "2");
    await page.waitForFunction((old) => document.querySelector("section:has(#wear-before) .finding")?.textContent !== old, before);
    const told = JSON.parse(await practice.command("before-after", "c06", "--before", "1", "--after", "2", "--json"));
    assert.ok((await page.textContent("section:has(#wear-before) .finding")).includes(told.finding.sentence));
    await page.selectOption("#wear-before", "2");
    await page.waitForSelector("text=Choose two different wears.");
  });

  test("expected and laboratory A1c, apart, with reasons and a range (T17)", async () => {
    const labs = await page.textContent("article");
    assert.match(labs, /glucose management indicator \(GMI\) of 6.7 %/);
    assert.match(labs, /Half of people differ by 0.5 or more/);
    assert.match(labs, /in 95 of 100 such cases between/);
    assert.match(labs, /6.9 % \(52 mmol\/mol\)/);
    assert.match(labs, /of the 84 days before it \d+ were seen/);
  });

  test("the way to the remission criteria says what waits, and who confirms (T18)", async () => {
    assert.match(await page.textContent("article"), /Does not meet the consensus definition while a medicine that lowers glucose is taken/);
    await at("c05");
    await page.waitForSelector(".change-helped");
    assert.match(await page.textContent("article"), /Meets the numbers of the consensus definition; your prescriber confirms/);
    assert.match(await page.textContent("article"), /at least once a year/);
    // With a diet programme the wait is longer.
    await page.click("summary:has-text('A diet programme or an operation')");
    await page.getByLabel("Diet programme started on").fill("2026-01-20");
    await page.waitForFunction(() => !document.querySelector("article").textContent.includes("Meets the numbers of the consensus definition"));
    assert.doesNotMatch(await page.textContent("article"), /cured/i);
  });

  test("our story so far: one line of dates, what was kept, what is not known", async () => {
    const told = JSON.parse(await practice.command("story", "c05", "--json"));
    const line = page.getByRole("region", { name: "One line of dates" });
    assert.equal(await line.locator("tbody tr").count(), told.labs.line.length);
    assert.match(await line.textContent(), /metformin stopped/);
    for (const unknown of told.unknown) assert.ok((await page.textContent("article")).includes(unknown));
    const reply = await page.evaluate(async () => (await fetch("/api/clients/c05/story/page")).headers.get("content-security-policy"));
    assert.match(reply, /style-src 'sha256-/);
  });

  test("a client without readings is told so, with the places still there", async () => {
    await practice.command("client", "add", "Client Sorrel (invented)", "--handle", "c40");
    await at("c40");
    await page.waitForSelector(".empty");
    assert.match(await page.textContent(".age"), /no reading of this client yet/);
    await page.waitForSelector(".client-places a:has-text('What we agreed')");
  });

  test("everywhere: axe by day and night, one heading, a phone's width and 200 % zoom", async () => {
    await standsEverywhere(opened, "/client/c05/helped", ".change-helped");
  });

  test("no script failed and the security policy stopped nothing on the way", () => assert.deepEqual(opened.errors, []));
});

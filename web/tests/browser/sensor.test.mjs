// What we know of the sensor: how wears ended, how far it reads from finger-pricks, what is left (task T7 as far as the
// place goes).
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

let opened;
let page;
let practice;
const at = (client) => page.goto(`${practice.address}/client/${client}/sensor`);

before(async () => {
  opened = await openedPage(/\b(401|404|409|422)\b/);
  ({ page, practice } = opened);
});
after(async () => opened?.close());

describe("What we know of the sensor", { concurrency: false }, () => {
  test("is reached from the review by its question", async () => {
    await page.goto(`${practice.address}/client/c05`);
    await page.click(".client-places a:has-text('What we know of the sensor')");
    await page.waitForSelector("h1:has-text('What we know of the sensor')");
    assert.match(await page.textContent(".age"), /The last reading was .* ago/);
  });

  test("each wear stands with how long it lasted and how it ended; few compare nothing yet", async () => {
    const told = JSON.parse(await practice.command("sensor", "c05", "--json"));
    const rows = page.getByRole("region", { name: "How long each wear lasted, and how it ended" }).locator("tbody tr");
    assert.equal(await rows.count(), told.wears.length);
    const text = await page.textContent("article");
    for (const { end } of told.wears) assert.ok(text.includes(end));
    for (const { question, sentence } of told.findings) {
      assert.ok(text.includes(question));
      assert.ok(text.includes(sentence));
    }
    assert.match(text, /With fewer than 20 wears, an overpatch, a site or a kind of sensor can't be compared yet/);
  });

  test("how a sensor sat and why it ended is told by keyboard, counts, and is told anew (T7)", async () => {
    await at("c05");
    await page.getByLabel("How it ended", { exact: true }).selectOption("fell-off");
    await page.getByLabel("Overpatch", { exact: true }).selectOption("yes");
    await page.getByLabel("Where it sat", { exact: true }).fill("back of the left arm");
    await page.keyboard.press("Enter");
    await page.waitForSelector("text=wear 3: kept.");
    const { wears, findings } = JSON.parse(await practice.command("sensor", "c05", "--json"));
    assert.deepEqual([wears[2].end, wears[2].overpatch, wears[2].site], ["fell off", true, "back of the left arm"]);
    await page.waitForSelector("[aria-label^='How long each wear lasted'] tr:has-text('fell off'):has-text('back of the left arm')");
    assert.equal(findings.length, 4);
    for (const { sentence } of findings) await page.waitForFunction((text) => document.querySelector("article").textContent.includes(text), sentence);
    await page.getByLabel("How it ended", { exact: true }).selectOption("planned");
    await page.getByRole("button", { name: "Keep this" }).click();
    await page.waitForSelector("[aria-label^='How long each wear lasted'] tbody tr:last-child:not(:has-text('fell off'))");
  });

  test("zones of the error grid stand as letters and numbers, in no colour of their own", async () => {
    for (const client of ["c05", "c06", "c01", "c02", "c10"]) {
      const { accuracy } = JSON.parse(await practice.command("sensor", client, "--json"));
      if (accuracy.pairs === 0) continue;
      await at(client);
      await page.click("summary:has-text('Pairs by zone of the error grid')");
      const rows = page.getByRole("region", { name: "Pairs by zone of the error grid" }).locator("tbody tr");
      assert.deepEqual(await rows.allTextContents(), accuracy.zones_a_to_e.map((pairs, zone) => "ABCDE"[zone] + pairs));
      return;
    }
    assert.fail("the invented practice has finger-pricks beside readings");
  });

  test("supplies: what is told under 'Who is this' stands here", async () => {
    await at("c05");
    await page.click("a:has-text('Change it under')");
    await page.waitForSelector("h1:has-text('Who is this')");
    const section = page.locator("section:has(h2:text-is('Sessions and sensors'))");
    await section.getByLabel("Sensors bought").fill("6");
    await section.getByLabel("Sensors used").fill("4");
    await section.getByRole("button", { name: "Keep" }).click();
    await page.waitForSelector("text=Kept.");
    await at("c05");
    const row = page.getByRole("region", { name: "What was bought, used and is left" }).locator("tr:has(th:text-is('Sensors'))");
    await row.waitFor();
    assert.equal(await row.textContent(), "Sensors642");
  });

  test("a client without readings is told so, with the places still there", async () => {
    await practice.command("client", "add", "Client Sorrel (invented)", "--handle", "c40");
    await at("c40");
    await page.waitForSelector(".empty:has-text('nothing is known of their sensors')");
    assert.equal(await page.locator("h1").count(), 1);
    await page.waitForSelector(".client-places a:has-text('What we agreed')");
  });

  test("everywhere: axe by day and night, one heading, a phone's width and 200 % zoom", async () => {
    await standsEverywhere(opened, "/client/c05/sensor", ".finding");
  });

  test("no script failed and the security policy stopped nothing on the way", () => assert.deepEqual(opened.errors, []));
});

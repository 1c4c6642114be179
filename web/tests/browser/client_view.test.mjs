// The screen turned to the client: their own words, nothing of others, what safety rule 12 turns off stays off.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

let opened;
let page;
let practice;

before(async () => {
  opened = await openedPage(/\b(401|404|409|422)\b/);
  ({ page, practice } = opened);
});
after(async () => opened?.close());

describe("The screen turned to the client", { concurrency: false }, () => {
  test("shows the handout, what was agreed and pages that explain; no other client, no jargon", async () => {
    await page.goto(`${practice.address}/client/c01/plan`);
    await page.waitForSelector(".papers");
    await page.click("button:has-text('Turn the screen to the client')");
    await page.waitForSelector(".client-view .paper");
    const handout = JSON.parse(await practice.command("handout", "c01", "--json"));
    assert.equal(await page.textContent("h1"), handout.title);
    const shown = await page.textContent("body");
    assert.match(shown, /dinner before 19:30 on four days a week/);
    const { clients } = JSON.parse(await practice.command("caseload", "--json"));
    for (const { name } of clients) assert.ok(!name.includes("Alder") ? !shown.includes(name) : true, name);
    assert.doesNotMatch(shown, /95 %|interval|GMI|escalation|coefficient|Who needs me|Only for the coach|For you alone/i);
  });

  test("at a day it shows that day after what leads, with the age of the last reading and nothing in the coach's terms", async () => {
    await page.click("button:has-text('Turn the screen back')");
    await page.goto(`${practice.address}/client/c09/day/2026-04-18`);
    await page.waitForSelector("article.day .plot canvas");
    await page.click("button:has-text('Turn the screen to the client')");
    const sheet = page.locator(".client-view section.day");
    await sheet.getByRole("heading", { name: "Your day: Sat 18 April 2026" }).waitFor();
    await sheet.locator(".plot canvas").waitFor();
    await sheet.locator(".lane li .told").first().waitFor();
    assert.match(await sheet.innerText(), /The last reading was .* (What came after it is not known|Nothing can be said since then)/);
    assert.doesNotMatch(await page.textContent("body"), /suspect|dip|warm-up|interval|GMI|For you alone/i);
    assert.match(await page.innerText(".client-view"), /your glucose was very low\. Ring your clinic today[^]*Your day/);
    await nothingSerious(page);
    await page.goto(`${practice.address}/client/c09/ninety-days`);
    await page.getByRole("heading", { name: "Your last 90 days" }).waitFor();
  });

  test("no key and no way back in the window leads to notes or to others", async () => {
    await page.locator("h1").focus();
    for (const key of ["n", "p", "Escape"]) await page.keyboard.press(key);
    assert.equal(await page.locator("dialog[open]").count(), 0);
    await page.waitForSelector(".client-view");
    await page.evaluate(() => history.pushState(null, "", "/"));
    await page.evaluate(() => dispatchEvent(new PopStateEvent("popstate")));
    await page.waitForSelector(".client-view", { state: "detached" });
    assert.equal(await page.locator(".client-row").count(), 0);
    await page.reload();
    await page.waitForSelector("button:has-text('Turn the screen back')");
    assert.equal(await page.locator(".client-row").count(), 0);
    await page.click("button:has-text('Turn the screen back')");
    await page.waitForSelector(".client-row");
  });

  test("with an open eating screen no food, weight or hours in range stand on it (T20)", async () => {
    const fewer = await page.evaluate(async () => {
      const { clients } = await (await fetch("/api/clients")).json();
      for (const { handle } of clients) {
        if ((await (await fetch(`/api/clients/${handle}/papers`)).json()).fewer_numbers) return handle;
      }
      return null;
    });
    assert.ok(fewer);
    await page.goto(`${practice.address}/client/${fewer}`);
    await page.click("button:has-text('Turn the screen to the client')");
    await page.waitForSelector(".client-view .paper");
    assert.doesNotMatch(await page.textContent(".client-view .paper"), /weight|kcal|carbohydrate|hours in range/i);
    // Nor live numbers, wherever the screen is turned.
    await page.goto(`${practice.address}/client/${fewer}/trace`);
    await page.getByRole("heading", { name: "To look at together" }).waitFor();
    assert.equal(await page.locator(".client-view .plot").count(), 0);
  });

  test("axe by day and night, one heading, a phone's width and 200 % zoom", async () => {
    await page.click("button:has-text('Turn the screen back')");
    await standsEverywhere(opened, "/client/c01/plan", ".client-view .paper", (at) => at.click("button:has-text('Turn the screen to the client')"));
  });

  test("no script failed and the security policy stopped nothing on the way", () => assert.deepEqual(opened.errors, []));
});

// The page as a coach meets it, on the invented practice, served by the program itself.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { chromium } from "playwright-core";
import { launchOptions, signIn } from "./browser.mjs";
import { fitsTheWidth, nothingSerious } from "./on_every_place.mjs";
import { servedPractice } from "./practice.mjs";

const client = "c09"; // very low at night on gliclazide
const caseload = "h1:has-text('Who needs me')";

let practice;
let browser;
let context;
let page;
const errors = [];

async function focused(on) {
  return on.evaluate(() => document.activeElement?.textContent ?? "");
}

before(async () => {
  practice = await servedPractice();
  browser = await chromium.launch(launchOptions);
  context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  context.setDefaultTimeout(20_000); // a busy machine is no failure
  page = await context.newPage();
  page.on("pageerror", (error) => errors.push(String(error)));
  page.on("console", (message) => {
    // The one refusal that is meant: nobody is signed in yet.
    if (message.type() === "error" && !message.text().includes("401")) errors.push(message.text());
  });
});

after(async () => {
  await browser?.close();
  await practice?.stop();
});

describe("the page", { concurrency: false }, () => {
  test("asks for the passphrase first and tells a wrong one in words", async () => {
    await page.goto(`${practice.address}/client/${client}`);
    await page.fill("#coach", "o1");
    await page.fill("#passphrase", "another one");
    await page.press("#passphrase", "Enter");
    await page.waitForSelector("[role=alert]");
    assert.match(await page.textContent("[role=alert]"), /don't belong together/);
    await nothingSerious(page);
    await page.goto(practice.address);
    await signIn(page, practice.passphrase);
  });

  test("Who needs me: the unsafe one first, in words, with one next action (T9, T22)", async () => {
    const first = page.locator(".clients > li").first();
    assert.match(await first.textContent(), /Client Maple \(invented\)/);
    assert.match(await first.textContent(), /55 min below 54 mg\/dL, lowest 43 mg\/dL/);
    assert.match(await first.textContent(), /Next: Tell the client and the prescriber today/);
    // In the order that the command gives.
    const told = JSON.parse(await practice.command("caseload", "--json"));
    const shown = await page.locator(".clients > li h2 a").allTextContents();
    assert.deepEqual(shown, told.clients.map(({ name }) => name));
    await nothingSerious(page);
  });

  test("clients with nothing due are counted and reachable (T22)", async () => {
    const nothing = page.locator(".nothing-due");
    const counted = Number(/^\d+/.exec(await nothing.locator("summary").textContent())[0]);
    await nothing.locator("summary").click();
    assert.equal(await nothing.locator("li.client-row").count(), counted);
    assert.ok(counted > 0);
    assert.match(await nothing.locator("li.client-row").first().textContent(), /The last reading was|No readings since/);
  });

  test("a client opens and closes in three actions of the keyboard (T22)", async () => {
    await page.goto(practice.address);
    await page.waitForSelector(".client-row");
    await page.keyboard.press("ArrowDown");
    assert.equal(await focused(page), "Client Maple (invented)");
    await page.keyboard.press("Enter");
    await page.waitForSelector("h1:has-text('Review of Client Maple')");
    await page.keyboard.press("Escape");
    await page.waitForSelector(caseload);
    await page.waitForFunction(() => document.activeElement?.textContent === "Client Maple (invented)");
  });

  test("the review opens with what is very low and says whom to tell (T9)", async () => {
    await page.goto(`${practice.address}/client/${client}`);
    await page.waitForSelector(".review .days a");
    const headings = await page.locator(".review h2").allTextContents();
    assert.equal(headings[0], "Was glucose very low?");
    const order = ["To answer first", "What these days say", "To take from this sitting", "What can't be said"];
    assert.deepEqual(headings.filter((heading) => order.includes(heading)), order);
    assert.match(await page.textContent(".finding.leads"), /tell the client and the prescriber/);
    assert.match(await page.textContent(".age"), /The last reading was Mon 20 April 08:25/);
    assert.match(await page.textContent(".bottom"), /Not an alarm/);
  });

  test("the last reading and that this is no alarm, in every place", async () => {
    const other = await context.newPage();
    for (const path of ["/", `/client/${client}`, `/client/${client}/day/2026-04-18`, `/client/${client}/trace`]) {
      await other.goto(practice.address + path);
      await other.waitForSelector(".client-row, .review .age, .day .age");
      assert.match(await other.textContent(".bottom"), /Not an alarm. Don't rely on this page to be woken or warned./);
      if (path !== "/") assert.match(await other.textContent(".age"), /The last reading was Mon 20 April 08:25, 35 min/);
    }
    await other.close();
  });

  test("figures are drawn, told in words and given as tables", async () => {
    for (const figure of await page.locator(".review figure").all()) {
      assert.ok((await figure.locator("figcaption").textContent()).length > 20);
      assert.ok((await figure.locator("svg polyline, svg polygon, svg circle").count()) > 0);
      assert.ok((await figure.locator("table tbody tr").count()) > 0);
    }
    const hours = page.locator(".review figure").first();
    // The hatch of very low is painted, not the fallback of a pattern that isn't found.
    const fills = await hours.locator("svg polygon").evaluateAll((shapes) => shapes.map((shape) => shape.getAttribute("fill")));
    const patterns = fills.filter((fill) => fill?.startsWith("url("));
    assert.ok(patterns.length >= 2, fills.join());
    for (const pattern of patterns) assert.equal(await page.locator(pattern.slice(4, -1)).count(), 1);
    await nothingSerious(page);
  });

  test("an escalation is answered with a name and what was done, and stays told", async () => {
    const open = page.locator(".escalations > ol > li");
    const waiting = await open.count();
    assert.ok(waiting > 1);
    const sentence = (await open.first().locator("p").first().textContent()).slice(0, 60);
    await open.first().getByRole("button").click();
    await page.getByLabel("What was done").fill("rang the client and the practice nurse");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    await page.waitForFunction((count) => document.querySelectorAll(".escalations > ol > li").length === count, waiting - 1);
    const answered = page.locator(".escalations details");
    assert.ok((await answered.textContent()).includes(sentence.slice(0, 40)));
    assert.match(await answered.textContent(), /rang the client and the practice nurse/);
    assert.match(await practice.command("acknowledge", client), /rang the client and the practice nurse/);
  });

  test("a note and a promise by one key each", async () => {
    await page.locator("h1").focus();
    await page.keyboard.press("n");
    await page.getByLabel("Note", { exact: true }).fill("She sleeps in the guest room since March.");
    await page.getByRole("button", { name: "Keep the note" }).press("Enter");
    await page.waitForSelector("dialog li:has-text('guest room')");
    await nothingSerious(page);
    await page.keyboard.press("Escape");
    await page.keyboard.press("p");
    await page.getByLabel("What is promised").fill("send the start page");
    await page.getByLabel("By which day").fill("2026-04-22");
    await page.getByRole("button", { name: "Keep the promise in mind" }).press("Enter");
    await page.waitForSelector("dialog li:has-text('send the start page')");
    await page.keyboard.press("Escape");
    assert.match(await practice.command("note", client), /guest room/);
    assert.match(await practice.command("promise", client), /send the start page/);
  });

  test("single keys can be turned off", async () => {
    await page.keyboard.press("?");
    await page.getByLabel("Single keys are on").uncheck();
    await page.keyboard.press("Escape");
    await page.keyboard.press("n");
    assert.equal(await page.locator("dialog[open]").count(), 0);
    await page.getByRole("button", { name: "Keys" }).click();
    await page.getByLabel("Single keys are on").check();
    await page.keyboard.press("Escape");
  });

  test("the day sheet: sentence, trace, lanes aligned under it, by drag and by keyboard", async () => {
    await page.click(".days a:has-text('Sat 18 April')");
    await page.waitForSelector(".plot canvas");
    assert.match(await page.textContent(".lead-line"), /in range/);
    assert.deepEqual(
      (await page.locator(".lane h3").allTextContents()).filter((name) => name !== "Low" && name !== "Suspect"),
      ["Ate", "Moved", "Slept", "Felt", "Took"],
    );
    const sleep = page.locator(".lane:has(h3:text-is('Slept')) li .bar").first();
    const whole = await sleep.evaluate((bar) => bar.getBoundingClientRect().width);
    const plot = await page.locator(".u-over").boundingBox();
    const lane = await page.locator(".lane ul").first().boundingBox();
    // Aligned to the pixel: the same left edge, the same width.
    assert.ok(Math.abs(plot.x - lane.x) <= 1 && Math.abs(plot.width - lane.width) <= 1, JSON.stringify([plot, lane]));
    await page.mouse.move(plot.x + 5, plot.y + 50);
    await page.mouse.down();
    await page.mouse.move(plot.x + plot.width / 2, plot.y + 60, { steps: 5 });
    await page.mouse.up();
    await page.waitForFunction((before) => {
      const items = [...document.querySelectorAll(".lane")].find((one) => one.querySelector("h3").textContent === "Slept");
      return items.querySelector("li .bar").getBoundingClientRect().width > before * 1.3;
    }, whole);
    await page.locator(".sheet").focus();
    await page.keyboard.press("0");
    await page.waitForFunction((before) => {
      const items = [...document.querySelectorAll(".lane")].find((one) => one.querySelector("h3").textContent === "Slept");
      return Math.abs(items.querySelector("li .bar").getBoundingClientRect().width - before) < 2;
    }, whole);
    await nothingSerious(page);
  });

  test("a value is read under the pointer and in the table, by the client's clock", async () => {
    const plot = await page.locator(".u-over").boundingBox();
    await page.mouse.move(plot.x + plot.width / 2, plot.y + 50);
    await page.waitForFunction(() => /^1[12]:\d\d: \d+ mg\/dL$/.test(document.querySelector(".under").textContent));
    assert.equal(await page.locator(".axis-unit").textContent(), "mg/dL", "the levels at the side have their unit above them");
    const table = page.locator("details:has(summary:text-is('Readings as a table'))");
    await table.locator("summary").click();
    assert.match(await table.locator("tbody tr").first().textContent(), /^00:\d\d\d+/);
  });

  test("Escape leads from the day back to the review, and on to the list", async () => {
    await page.keyboard.press("Escape");
    await page.waitForSelector("h1:has-text('Review of')");
    await page.waitForSelector(".days a[data-date='2026-04-18']:focus");
    assert.ok(await page.evaluate(() => scrollY > 0), "the list of days is where it was left");
    await page.keyboard.press("Escape");
    await page.waitForSelector(caseload);
  });

  test("what the command brings in shows without a reload, in every tab, by one stream", async () => {
    const other = await context.newPage();
    await other.goto(practice.address);
    await other.waitForSelector(".client-row");
    await page.evaluate(() => (globalThis.notReloaded = true));
    // A promise of today moves a client with nothing due up the list.
    assert.equal(await page.locator(".clients > li:has-text('ring about the wear')").count(), 0);
    await practice.command("promise", "c01", "ring about the wear", "--by", "2026-04-20");
    for (const tab of [page, other]) await tab.waitForSelector(".clients > li:has-text('ring about the wear')");
    assert.equal(await page.evaluate(() => globalThis.notReloaded), true);
    const held = await page.evaluate(() => navigator.locks.query());
    const ours = (locks) => locks.filter(({ name }) => name === "tracewright-changes").length;
    assert.equal(ours(held.held), 1);
    assert.equal(ours(held.pending), 1);
    // When the tab that listens closes, the other takes over.
    await other.close();
    await practice.command("promise", "c01", "and about the diary", "--by", "2026-04-19");
    await page.waitForSelector(".clients > li:has-text('and about the diary')");
  });

  test("an import by the command shows in the open review", async () => {
    await practice.command("client", "add", "Client Sorrel (invented)", "--handle", "c40");
    await page.goto(`${practice.address}/client/c40`);
    await page.waitForSelector(".empty a:has-text('Bring in the first file')");
    await practice.command("bring-in", "c40", `${practice.files}/alder`);
    await page.waitForSelector("h1:has-text('Review of Client Sorrel')");
  });

  test("nothing is wider than a phone, nor than the window at 200 % zoom", async () => {
    for (const width of [360, 640]) {
      const narrow = await context.newPage();
      await narrow.setViewportSize({ width, height: 740 });
      for (const path of ["/", `/client/${client}`, `/client/${client}/day/2026-04-18`, `/client/${client}/trace`]) {
        await narrow.goto(practice.address + path);
        await narrow.waitForSelector(".client-row, .review .days a, .plot canvas");
        await fitsTheWidth(narrow);
        const slid = await narrow.evaluate(() => [...document.querySelectorAll("figure")].map((figure) => {
          const drawn = figure.querySelector(".drawn.slides");
          const hint = figure.querySelector(".slide-hint");
          return { wider: drawn !== null && drawn.scrollWidth > drawn.clientWidth, told: hint !== null && hint.offsetParent !== null };
        }));
        for (const { wider, told } of slid) assert.equal(told, wider, "a figure wider than the screen is told to be so, no other");
        if (width === 360 && path === `/client/${client}`) assert.ok(slid.some(({ told }) => told));
      }
      await narrow.close();
    }
  });

  test("dark, and with motion turned down: nothing serious either", async () => {
    const dark = await context.newPage();
    await dark.emulateMedia({ colorScheme: "dark", reducedMotion: "reduce" });
    for (const path of ["/", `/client/${client}`, `/client/${client}/day/2026-04-18`, `/client/${client}/trace`]) {
      await dark.goto(practice.address + path);
      await dark.waitForSelector(".client-row, .review .days a, .plot canvas");
      await nothingSerious(dark);
    }
    await dark.close();
  });

  test("a page that lost the program says so, and asks to sign in when it is there anew", async () => {
    await page.goto(practice.address);
    await page.waitForSelector(".live:not(.lost)");
    await practice.halt();
    await page.waitForSelector(".live.lost");
    await practice.serve();
    await page.waitForSelector("text=The session has ended", { timeout: 20_000 });
    await signIn(page, practice.passphrase);
    errors.splice(0, errors.length, ...errors.filter((error) => !/ERR_CONNECTION|ERR_INCOMPLETE|ERR_EMPTY/.test(error)));
  });

  test("signing out leaves nothing to be seen", async () => {
    await page.goto(practice.address);
    await page.getByRole("button", { name: "Sign out" }).click();
    await page.waitForSelector("#passphrase");
    assert.equal(await page.locator("text=Client Maple").count(), 0);
    const refused = await page.evaluate(async () => (await fetch("/api/caseload")).status);
    assert.equal(refused, 401);
  });

  test("no script failed and the security policy stopped nothing on the way", () => {
    assert.deepEqual(errors.filter((error) => !/404/.test(error)), []);
  });
});

// The trace moved and looked at closer with mouse, wheel, keys and fingers, on a day, a fortnight and ninety days.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { nothingSerious } from "./on_every_place.mjs";
import { looks, openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

const client = "c09";
const all = "All of it is shown.";

let opened;
let page;
let practice;

before(async () => {
  opened = await openedPage();
  ({ page, practice } = opened);
});
after(async () => opened?.close());

const told = (on = page) => on.textContent(".trace-sheet [role=status]");

/** What stretch is told once it is another one than before, as [from, to]. */
async function toldAfter(before, on = page) {
  await on.waitForFunction((old) => document.querySelector(".trace-sheet [role=status]").textContent !== old, before);
  return told(on);
}

async function openTrace(place = "trace", on = page) {
  await on.goto(`${practice.address}/client/${client}/${place}`);
  await on.waitForSelector(".plot canvas");
  const over = on.locator(".u-over");
  await over.scrollIntoViewIfNeeded();
  const box = await over.boundingBox();
  return { ...box, at: (share) => [box.x + share * box.width, box.y + box.height / 2] };
}

async function drag(from, to) {
  await page.mouse.move(...from);
  await page.mouse.down();
  await page.mouse.move(...to, { steps: 6 });
  await page.mouse.up();
}

describe("The trace", { concurrency: false }, () => {
  test("a drag over all of it looks closer, a further drag moves along it, and there is a way back", async () => {
    const { at } = await openTrace();
    assert.equal(await told(), all);
    await drag(at(0.5), at(0.75));
    const closer = await toldAfter(all);
    assert.match(closer, /^Shown: about \w{3} \d+ April, \d\d:00 to \w{3} \d+ April, \d\d:00\.$/);
    await drag(at(0.3), at(0.6));
    const earlier = await toldAfter(closer);
    assert.match(earlier, /^Shown: about /);
    // Back by as much: the same stretch, to the label.
    await drag(at(0.6), at(0.3));
    assert.equal(await toldAfter(earlier), closer);
    await page.keyboard.down("Shift");
    await drag(at(0.4), at(0.6));
    await page.keyboard.up("Shift");
    const closest = await toldAfter(closer);
    assert.notEqual(closest, earlier);
    await page.getByRole("button", { name: "Show all of it" }).click();
    assert.equal(await toldAfter(closest), all);
  });

  test("a plain wheel scrolls the page; with Ctrl held it comes closer to what is under the pointer", async () => {
    const { at } = await openTrace("day/2026-04-18");
    await page.evaluate(() => scrollTo(0, 0));
    await page.mouse.move(...at(0.5));
    await page.mouse.wheel(0, 120);
    await page.waitForFunction(() => scrollY > 0);
    assert.equal(await told(), all);
    const under = async () => /^\d\d:\d\d/.exec(await page.textContent(".under"))?.[0];
    await page.locator(".u-over").scrollIntoViewIfNeeded();
    const box = await page.locator(".u-over").boundingBox();
    await page.mouse.move(box.x + 0.75 * box.width, box.y + 100);
    await page.waitForFunction(() => /^1[78]:\d\d/.test(document.querySelector(".under").textContent));
    const pointedAt = await under();
    const scrolled = await page.evaluate(() => scrollY);
    await page.keyboard.down("Control");
    for (let notch = 0; notch < 5; ++notch) await page.mouse.wheel(0, -100);
    const closer = await toldAfter(all);
    assert.match(closer, /, 1[5-7]:\d\d to .*, 18:\d\d\.$/);
    assert.equal(await page.evaluate(() => scrollY), scrolled);
    assert.equal(await page.evaluate(() => visualViewport.scale), 1);
    const minutes = (time) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));
    assert.ok(Math.abs(minutes(await under()) - minutes(pointedAt)) <= 5, `${await under()} is not ${pointedAt}`);
    for (let notch = 0; notch < 6; ++notch) await page.mouse.wheel(0, 100);
    await page.keyboard.up("Control");
    assert.equal(await toldAfter(closer), all);
    await nothingSerious(page);
  });

  test("by keys: reached by Tab, closer, along, wider, all of it; each told once it is at rest", async () => {
    await openTrace("day/2026-04-18");
    await page.locator(".way a").last().focus();
    await page.keyboard.press("Tab");
    assert.match(await page.evaluate(() => document.activeElement.className), /\bsheet\b/);
    const hint = await page.evaluate(() => document.getElementById(document.activeElement.getAttribute("aria-describedby")).textContent);
    assert.match(hint, /arrows move, plus and minus come closer or go wider, 0 shows all/);
    await page.keyboard.press("+");
    assert.equal(await toldAfter(all), "Shown: about Sat 18 April, 06:00 to Sat 18 April, 18:00.");
    await page.keyboard.press("ArrowRight");
    assert.equal(await toldAfter("Shown: about Sat 18 April, 06:00 to Sat 18 April, 18:00."), "Shown: about Sat 18 April, 09:00 to Sat 18 April, 21:00.");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("+");
    const close = await toldAfter("Shown: about Sat 18 April, 09:00 to Sat 18 April, 21:00.");
    assert.equal(close, "Shown: about Sat 18 April, 06:00 to Sat 18 April, 12:00.");
    await page.keyboard.press("0");
    assert.equal(await toldAfter(close), all);
  });

  test("two fingers come closer, one moves", async () => {
    const phone = await opened.newPage({ ...looks[0], hasTouch: true, isMobile: true });
    const { at } = await openTrace("trace", phone);
    const cdp = await phone.context().newCDPSession(phone);
    const touch = (type, ...shares) =>
      cdp.send("Input.dispatchTouchEvent", { type, touchPoints: shares.map((share, id) => ({ x: at(share)[0], y: at(share)[1], id })) });
    await touch("touchStart", 0.45, 0.55);
    for (const apart of [0.1, 0.2, 0.3]) await touch("touchMove", 0.5 - apart, 0.5 + apart);
    await touch("touchEnd");
    const closer = await toldAfter(all, phone);
    assert.match(closer, /^Shown: about /);
    await touch("touchStart", 0.3);
    for (const share of [0.4, 0.5, 0.6]) await touch("touchMove", share);
    await touch("touchEnd");
    assert.notEqual(await toldAfter(closer, phone), all);
    assert.equal(await phone.evaluate(() => visualViewport.scale), 1);
    await phone.context().close();
  });

  test("ninety days, by a link from the review; hours are named however close one looks", async () => {
    await page.goto(`${practice.address}/client/${client}`);
    const asked = [];
    const hear = (request) => request.url().includes("/trace?") && asked.push(new URL(request.url()).search);
    page.on("request", hear);
    await page.click("a:has-text('The last 90 days of readings')");
    await page.waitForSelector("h1:has-text('The last 90 days of readings')");
    await page.waitForSelector(".plot canvas");
    assert.deepEqual(asked, ["?days=90&readings=extremes"]);
    assert.match(await page.textContent(".age"), /The last reading was/);
    const { begin, end } = await page.evaluate(async (path) => (await fetch(path)).json(), `/api/clients/${client}/trace?days=90`);
    assert.ok(end - begin > 14 * 86_400);
    asked.length = 0;
    await page.locator(".sheet").focus();
    for (let times = 0; times < 9; ++times) await page.keyboard.press("+");
    const close = /about (.+), (\d\d):00 to (.+), (\d\d):00\.$/.exec(await toldAfter(all));
    assert.ok(close && close[2] !== close[4], await told());
    page.off("request", hear);
    assert.deepEqual(asked, ["?days=90"]);
    await nothingSerious(page);
    await standsEverywhere(opened, `/client/${client}/ninety-days`, ".sheet .lane");
  });

  test("fingers that look closer at ninety days hold the trace while all its readings come", async () => {
    const phone = await opened.newPage({ ...looks[0], hasTouch: true, isMobile: true });
    let bring;
    const waited = new Promise((resolve) => (bring = resolve));
    await phone.route(/\/trace\?days=90$/, async (route) => {
      await waited;
      await route.continue();
    });
    const { at } = await openTrace("ninety-days", phone);
    const cdp = await phone.context().newCDPSession(phone);
    const touch = (type, ...shares) =>
      cdp.send("Input.dispatchTouchEvent", { type, touchPoints: shares.map((share, id) => ({ x: at(share)[0], y: at(share)[1], id })) });
    await touch("touchStart", 0.4, 0.6);
    for (const apart of [0.2, 0.3]) await touch("touchMove", 0.5 - apart, 0.5 + apart);
    const closer = await toldAfter(all, phone);
    const came = phone.waitForResponse(/\/trace\?days=90$/);
    bring();
    await (await came).finished();
    await phone.waitForTimeout(300); // drawn
    await touch("touchMove", 0.05, 0.95);
    await touch("touchEnd");
    assert.match(await toldAfter(closer, phone), /^Shown: about /);
    await phone.context().close();
  });

  test("no script failed on the way", () => assert.deepEqual(opened.errors, []));
});

// Shares given, looked at by their holders, listed and revoked (task T21).
import assert from "node:assert/strict";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { fitsTheWidth, nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

let opened;
let practice;
let page;
const addresses = {};

/** A fortnight up to the day before the demo's today, with a low at night. */
function wear() {
  const lines = ["Time,Glucose mg/dL"];
  for (let i = 0; i < 14 * 288; i += 1) {
    const at = new Date(Date.UTC(2026, 3, 6) + i * 300_000);
    const low = i >= 8 * 288 + 32 && i < 8 * 288 + 38;
    lines.push(`${at.toISOString().slice(0, 16).replace("T", " ")},${low ? 62 : Math.round(125 + 25 * Math.sin(i / 40))}`);
  }
  const file = join(practice.folder, "wear.csv");
  writeFileSync(file, lines.join("\n"));
  return file;
}

/** A page of somebody who never signed in, on a phone. */
async function asHolder(address, look = { viewport: { width: 360, height: 740 } }) {
  const context = await page.context().browser().newContext(look);
  const here = await context.newPage();
  const reply = await here.goto(address);
  return { here, status: reply.status(), close: () => context.close() };
}

async function give(recipient, purpose, kinds, days) {
  await page.getByLabel("To whom").fill(recipient);
  await page.getByLabel("What for").fill(purpose);
  for (const [kind, on] of Object.entries(kinds)) await page.getByLabel(kind).setChecked(on);
  await page.getByLabel("How many days back").fill(days);
  await page.getByRole("button", { name: "Give it" }).press("Enter");
  const field = page.getByLabel("Address of the share");
  await field.waitFor();
  const address = await field.inputValue();
  await page.getByRole("button", { name: "I have handed it over" }).click();
  await field.waitFor({ state: "detached" });
  return address;
}

before(async () => {
  opened = await openedPage(/401|403|422/);
  ({ practice, page } = opened);
  const facts = join(practice.folder, "facts.json");
  writeFileSync(
    facts,
    JSON.stringify({
      zones: [{ zone: "Europe/Berlin", from: null }],
      unit: "mg/dL",
      medicines_asked_on: "2026-04-01",
      medicines: [{ written: "metformin 500" }],
      consent: { given_on: "2026-04-01" },
      cautions: { eating_screen: { asked_on: "2026-04-01", by: "Larch (invented)", positive: "no" } },
    }),
  );
  await practice.command("client", "add", "Client Reed (invented)", "--handle", "c40", "--facts", facts);
  await practice.command("bring-in", "c40", wear());
  await practice.command("note", "c40", "the coach's own words");
});

after(async () => {
  await opened?.close();
});

describe("Shares", { concurrency: false }, () => {
  test("hours in range and lows are chosen, mood, notes and weight are off", async () => {
    await page.goto(`${practice.address}/client/c40`);
    await page.getByRole("link", { name: "Shares" }).click();
    await page.waitForSelector("h1:has-text('Shares of')");
    assert.match(await page.textContent(".shares"), /Nothing was shared yet/);
    assert.match(await page.textContent(".shares"), /The last reading was/);
    const chosen = await page.locator("input[name=kind]:checked").evaluateAll((ticks) => ticks.map((tick) => tick.value));
    assert.deepEqual(chosen, ["hours in range", "lows"]);
    assert.equal(await page.getByLabel("How many days back").inputValue(), "14");
    assert.equal(await page.getByLabel("Open until").inputValue(), "2026-05-20");
    await nothingSerious(page);
  });

  test("a share of nothing is not given", async () => {
    await page.getByLabel("To whom").fill("nobody");
    await page.getByLabel("What for").fill("nothing");
    for (const kind of ["Hours in range", "Lows"]) await page.getByLabel(kind, { exact: true }).uncheck();
    await page.getByRole("button", { name: "Give it" }).click();
    await page.waitForSelector("text=Choose at least one thing");
    for (const kind of ["Hours in range", "Lows"]) await page.getByLabel(kind, { exact: true }).check();
  });

  test("the spouse and the surgery get each their own address, told once", async () => {
    addresses.spouse = await give("my wife", "to help at night", {}, "14");
    await page.waitForSelector("li:has-text('my wife')");
    addresses.surgery = await give("the surgery", "the visit in May", { "Hours in range": false, "Medicines, as told": true, "Letter to the prescriber": true }, "7");
    await page.waitForSelector("li:has-text('the surgery')");
    assert.match(addresses.spouse, /^http:\/\/\S+\/share\/[\w-]{43}$/);
    assert.notEqual(addresses.spouse, addresses.surgery);
    assert.ok(!(await page.content()).includes(addresses.spouse.slice(-43)));
    assert.match(await page.textContent("li:has-text('my wife')"), /The last 14 days; given Mon 20 April 2026, until Wed 20 May 2026/);
  });

  test("on a phone the spouse sees hours in range and lows, and no more", async () => {
    const { here, status, close } = await asHolder(addresses.spouse);
    assert.equal(status, 200);
    const text = await here.textContent("body");
    assert.match(text, /For my wife/);
    assert.match(text, /The last reading was/);
    assert.match(text, /Not an alarm/);
    assert.match(text, /Hours in range/);
    assert.match(text, /Tue 14 April 02:40/);
    for (const other of [/Reed/, /metformin/, /own words/, /c40/]) assert.doesNotMatch(text, other);
    await fitsTheWidth(here);
    await nothingSerious(here);
    await close();
  });

  test("the surgery sees the letter; a direct address for anything else is refused and listed", async () => {
    const surgery = await asHolder(addresses.surgery, { viewport: { width: 360, height: 740 }, colorScheme: "dark" });
    assert.equal(surgery.status, 200);
    const text = await surgery.here.textContent("body");
    assert.match(text, /metformin 500/);
    assert.match(text, /The last 7 days/);
    await fitsTheWidth(surgery.here);
    await nothingSerious(surgery.here);
    await surgery.close();
    for (const kind of ["diary", "mood", "notes", "letter", "medicines", "c09"]) {
      const asked = await asHolder(`${addresses.spouse}/${kind}`);
      assert.equal(asked.status, 403, kind);
      assert.match(await asked.here.textContent("body"), /Not allowed\./);
      await asked.close();
    }
    const other = await asHolder(`${practice.address}/api/clients/c40`);
    assert.equal(other.status, 401);
    await other.close();
    await page.reload();
    const spouse = page.locator("li", { hasText: "my wife" });
    await spouse.getByText("7 looks").click();
    const rows = await spouse.locator("tbody tr").allTextContents();
    assert.equal(rows.length, 7);
    assert.match(rows[0], /another address.*not in scope/);
    assert.match(rows[6], /the page.*open/);
  });

  test("what is revoked is closed at the next request", async () => {
    await page.getByRole("button", { name: "Revoke the share of my wife" }).press("Enter");
    await page.getByRole("button", { name: "Leave it open" }).click();
    assert.equal((await asHolder(addresses.spouse)).status, 200);
    await page.getByRole("button", { name: "Revoke the share of my wife" }).click();
    await page.getByRole("button", { name: "Yes, revoke it" }).click();
    await page.waitForSelector("li:has-text('my wife'):has-text('revoked')");
    const closed = await asHolder(addresses.spouse);
    assert.equal(closed.status, 403);
    assert.match(await closed.here.textContent("body"), /Not allowed\./);
    await fitsTheWidth(closed.here);
    await closed.close();
    assert.equal((await asHolder(addresses.surgery)).status, 200);
  });

  test("the eating screen closes its kinds, and the place says so", async () => {
    const screened = join(practice.folder, "screened.json");
    writeFileSync(screened, JSON.stringify({ cautions: { eating_screen: { positive: "yes" } }, consent: { withdrawn_on: "2026-04-20" } }));
    await practice.command("client", "change", "c40", "--facts", screened);
    await page.waitForSelector("text=/Closed in every share while the screen on eating .*hours in range/");
    await page.waitForSelector("text=No consent is written down that holds today");
    assert.equal((await asHolder(addresses.surgery)).status, 403);
  });

  test("narrow, at 200 % zoom and dark", async () => {
    await standsEverywhere(opened, "/client/c40/shares", "li:has-text('my wife')", (at) => at.getByText(/^\d+ looks$/).first().click());
  });

  test("no script failed and the security policy stopped nothing", () => assert.deepEqual(opened.errors, []));
});

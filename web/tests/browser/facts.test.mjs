// A new client, and all that is known of them on one place, by clicking and typing.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

let opened;
let practice;
let page;
let handle;

const facts = async () => JSON.parse(await practice.command("client", "show", handle, "--json"));
const section = (title) => page.locator(".facts", { has: page.locator(`h2:text-is("${title}")`) });
const keep = async (title) => {
  await section(title).getByRole("button", { name: /^Keep/ }).click();
  await section(title).locator("text=/^Kept\\./").waitFor();
};

before(async () => {
  opened = await openedPage(/401|404|409|422/);
  ({ practice, page } = opened);
});

after(async () => {
  await opened?.close();
});

describe("Who is this", { concurrency: false }, () => {
  test("a client is taken on from the list with a name and a clock", async () => {
    await page.click("a:has-text('Add a client')");
    await page.waitForSelector("h1:has-text('A new client')");
    await nothingSerious(page);
    await page.getByLabel("Name", { exact: true }).fill("Client Sorrel (invented)");
    await page.getByLabel("Time zone").fill("Europe/Berlin");
    await page.keyboard.press("Enter");
    await page.waitForSelector("h1:has-text('Who is this: Client Sorrel')");
    handle = page.url().split("/").at(-2);
    assert.equal((await facts()).zones[0].zone, "Europe/Berlin");
    await nothingSerious(page);
  });

  test("what is not answered is told with what it closes, and closes nothing else", async () => {
    const closed = section("What is closed now, and by what");
    assert.match(await closed.textContent(), /Not asked yet\./);
    assert.match(await closed.textContent(), /Closes: .*walking/);
    assert.match(await page.textContent(".client-facts"), /every low counts as one that a medicine may have caused/);
  });

  test("in any order: consent before why they came", async () => {
    await section("Consent").getByLabel("Given on").fill("2026-04-01");
    await section("Consent").getByLabel("Who sees it").fill("the coach alone");
    await keep("Consent");
    await section("Why they came").getByLabel("In their own words").fill("I want to sleep through.");
    await keep("Why they came");
    const known = await facts();
    assert.equal(known.consent.given_on, "2026-04-01");
    assert.equal(known.consent.who_sees, "the coach alone");
    assert.equal(known.why_they_came, "I want to sleep through.");
  });

  test("whom to ring", async () => {
    const box = section("Whom to ring");
    await box.getByRole("button", { name: "Add a line" }).click();
    await box.getByLabel("Who", { exact: true }).selectOption("prescriber");
    await box.getByLabel("Name").fill("Dr Reed (invented)");
    await box.getByLabel("Telephone").fill("030 000");
    await keep("Whom to ring");
    assert.deepEqual((await facts()).contacts, [{ kind: "prescriber", name: "Dr Reed (invented)", telephone: "030 000" }]);
  });

  test("medicines with dates: what is not recognised says so", async () => {
    const box = section("Medicines");
    await box.getByRole("button", { name: "Add a line" }).click();
    await box.getByLabel("Medicine, as told").fill("gliclazide 30 mg");
    await box.getByLabel("Since").fill("2026-01-02");
    await box.getByRole("button", { name: "Add a line" }).click();
    await box.getByLabel("Medicine, as told").nth(1).fill("the white one");
    await keep("Medicines");
    await box.locator("text=/not recognised: please ask/i").first().waitFor();
    assert.match(await box.textContent(), /gliclazide, /);
    assert.match(await box.textContent(), /Asked about on Mon 20 April 2026/);
    const known = await facts();
    assert.equal(known.medicines[0].from, "2026-01-02");
    assert.equal(known.medicines_asked_on, "2026-04-20");
    await nothingSerious(page);
  });

  test("a caution answered opens what depends on it", async () => {
    const box = section("What to be careful about");
    for (const label of ["Pregnant or planning", "Chest pain or tightness", "Numb feet or a wound on a foot", "Eye disease", "Frail"]) {
      await box.getByLabel(label).selectOption("no");
    }
    await keep("What to be careful about");
    assert.equal((await facts()).cautions.chest_symptoms, "no");
    assert.equal((await facts()).cautions.kidney_disease, "not asked");
  });

  test("their own goals have numbers, within bounds; another kind has its own again", async () => {
    const box = section("Agreed goals");
    const share = box.getByLabel("In range: more than this share of the day, %");
    assert.equal(await share.count(), 0);
    await box.getByLabel("Which goals hold").selectOption("own");
    await share.fill("60");
    await box.getByLabel("Low or very low: less than, %").fill("5");
    await box.getByRole("button", { name: /^Keep/ }).click();
    await box.locator("text=/below_range_below.*up to 4/").waitFor();
    await box.getByLabel("Low or very low: less than, %").fill("3");
    await box.getByLabel("Very low: less than, %", { exact: true }).fill("");
    await keep("Agreed goals");
    const { goals } = await facts();
    assert.deepEqual([goals.kind, goals.in_range_above, goals.below_range_below, goals.very_low_below], ["own", 60, 3, null]);
    await nothingSerious(page);
  });

  test("goals, sessions and sensors used and left", async () => {
    await section("Agreed goals").getByLabel("Which goals hold").selectOption("older");
    await section("Agreed goals").getByLabel("Agreed with").fill("the client");
    await keep("Agreed goals");
    const box = section("Sessions and sensors");
    await box.getByLabel("Sessions bought").fill("12");
    await box.getByLabel("Sessions used").fill("3");
    await keep("Sessions and sensors");
    await box.locator("text=9 left.").waitFor();
    const known = await facts();
    assert.equal(known.goals.kind, "older");
    assert.equal(known.goals.in_range_above, 50);
    assert.deepEqual(known.sessions, { bought: 12, used: 3 });
  });

  test("two sections are kept one right after the other", async () => {
    await section("Consent").getByLabel("Who sees it").fill("the coach and a nurse");
    await section("Why they came").getByLabel("In their own words").fill("I want to wake rested.");
    for (const title of ["Consent", "Why they came"]) await section(title).getByRole("button", { name: /^Keep/ }).click();
    await section("Why they came").locator("text=/^Kept\\./").waitFor();
    const known = await facts();
    assert.deepEqual([known.consent.who_sees, known.why_they_came], ["the coach and a nurse", "I want to wake rested."]);
  });

  test("what does not fit is told, and what was written stays", async () => {
    const box = section("About them");
    await box.getByLabel("Born in the year").fill("2015");
    await box.getByRole("button", { name: /^Keep/ }).click();
    await box.locator(".wrong:has-text('under 18')").waitFor();
    assert.equal((await facts()).born_year, null);
    assert.equal(await box.getByLabel("Born in the year").inputValue(), "2015");
  });

  test("what the command changes meanwhile is not overwritten", async () => {
    await section("Consent").getByLabel("What is kept").fill("readings and diary");
    await practice.command("client", "change", handle, "--name", "Client Sorrel the second (invented)");
    await page.waitForSelector("h1:has-text('the second')");
    assert.equal(await section("Consent").getByLabel("What is kept").inputValue(), "readings and diary");
    await keep("Consent");
    assert.equal((await facts()).consent.what_is_kept, "readings and diary");
  });

  test("copies first, then erased for good, after the handle is written out (T25)", async () => {
    const box = section("Take their data along, or leave");
    await box.locator("summary").click();
    await box.getByLabel(`Write ${handle} to erase`).fill(handle);
    await box.getByRole("button", { name: "Erase for good" }).click();
    await box.locator(".wrong:has-text('found no export of this client yet')").waitFor();
    const [download] = await Promise.all([page.waitForEvent("download"), box.locator("a[download]").first().click()]);
    assert.equal(download.suggestedFilename(), `${handle}-client.json`);
    await box.getByRole("button", { name: "Erase for good" }).click();
    await page.waitForSelector("h1:has-text('Who needs me')");
    assert.doesNotMatch(await practice.command("client", "list"), /Sorrel/);
  });

  test("narrow, at 200 % zoom and dark", async () => {
    await standsEverywhere(opened, "/client/c09/facts", ".facts");
    await standsEverywhere(opened, "/new-client", "#new-name");
  });

  test("no script failed and the security policy stopped nothing", () => assert.deepEqual(opened.errors, []));
});

// Special weeks (task T24): a steroid injection on day 5 and fever on days 9 and 10 typed into the diary, pregnancy told
// later. The client's facts are those of tests/days/t24-special-weeks.txt; all of it is invented.
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { fileURLToPath } from "node:url";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

const client = "c40";
const special = ["2026-03-06", "2026-03-07", "2026-03-10", "2026-03-11"];
let opened;
let practice;
let page;

const at = async (place, ready) => {
  await page.goto(`${practice.address}/client/${client}${place}`);
  await page.waitForSelector(ready, { state: "attached" });
};

/** A file of the case, as it stands between `file NAME` and `end`. */
function fileOfCase(name) {
  const text = readFileSync(fileURLToPath(new URL("../../../tests/days/t24-special-weeks.txt", import.meta.url)), "utf8");
  const [, body] = new RegExp(`^file ${name}\\n([\\s\\S]*?)\\nend$`, "m").exec(text);
  const file = join(practice.folder, name);
  writeFileSync(file, body);
  return file;
}

const days = Array.from({ length: 14 }, (_, i) => `2026-03-${String(2 + i).padStart(2, "0")}`);
const walked = (i) => i % 2 === 1;

/** 150 mg/dL but for the rise of each dinner, lower after a walk; on the four days also high in the afternoon, without an entry. */
function wear() {
  const lines = ["time,glucose (mg/dL)"];
  days.forEach((day, i) => {
    for (let quarter = 0; quarter < 96; quarter += 1) {
      const hour = quarter / 4;
      const evening = hour >= 19.25 && hour < 22.25;
      const ordinary = evening ? (walked(i) ? 169 : 213) : 150;
      const unlike = evening ? 260 : hour >= 14.5 && hour < 18.25 ? 230 : 150;
      const clock = `${String(Math.floor(hour)).padStart(2, "0")}:${String((quarter % 4) * 15).padStart(2, "0")}`;
      lines.push(`${day} ${clock},${(special.includes(day) ? unlike : ordinary) + (i % 3)}`);
    }
  });
  return fileOf("wear.csv", lines);
}

/** Porridge in the morning, rice at noon and stew in the evening, curry on the four days and on no other; a walk every other evening. */
function meals() {
  const lines = ["time,eaten,carbohydrate (g),movement (min)"];
  days.forEach((day, i) => {
    lines.push(`${day} 07:30,porridge,60,`, `${day} 12:00,rice,60,`, `${day} 19:00,${special.includes(day) ? "curry" : "stew"},60,`);
    if (walked(i)) lines.push(`${day} 19:20,,,15`);
  });
  return fileOf("meals.csv", lines);
}

function fileOf(name, lines) {
  const file = join(practice.folder, name);
  writeFileSync(file, lines.join("\n"));
  return file;
}

async function writes(date, line, kind) {
  await at(`/diary/${date}`, "#diary-text:focus");
  const before = await page.locator(".entries > li").count();
  await page.keyboard.type(line);
  await page.waitForSelector(`.understood li:has-text('${kind}')`);
  await page.keyboard.press("Enter");
  await page.waitForSelector("text=/kept\\.|Press Enter once more/");
  if (await page.locator("text=Press Enter once more").count()) await page.keyboard.press("Enter");
  await page.waitForFunction((n) => document.querySelectorAll(".entries > li").length === n + 1, before);
}

async function asksOfDinner() {
  await at("/goes-with", "#ask-about option[value=dinner]");
  await page.selectOption("#ask-about", "dinner");
  await page.getByRole("checkbox", { name: /^movement after the meal/ }).check();
  await page.getByRole("button", { name: "Ask", exact: true }).click();
  await page.waitForSelector(".answers .finding");
  return page.textContent(".answers");
}

const mealsShown = async () => {
  await page.waitForSelector("text=Foods compared over all wears");
  return page.textContent("section:has(> h2:text-is('Meals'))");
};

before(async () => {
  opened = await openedPage(/\b(401|404|409|422)\b/);
  ({ page, practice } = opened);
  await practice.command("client", "add", "Client Tansy (invented)", "--handle", client, "--facts", fileOfCase("facts.json"));
  await practice.command("bring-in", client, wear());
  await practice.command("bring-in", client, meals());
});
after(async () => opened?.close());

describe("Special weeks", { concurrency: false }, () => {
  let answeredBefore;

  test("before anything is told, no day is unlike the others and the rises look like food", async () => {
    await at("", ".review .days li");
    assert.match(await page.textContent("article"), /The goal for .* is more than/);
    assert.equal(await page.locator("h3:has-text('Were there days unlike the others?')").count(), 0);
    assert.equal(await page.locator(".days li:has-text('Unlike the others')").count(), 0);
    answeredBefore = await asksOfDinner();
    assert.doesNotMatch(answeredBefore, /illness or cortisone/);
    const shown = await mealsShown();
    assert.match(shown, /curry/);
    assert.match(shown, /Fri 6 March 14:\d\d: up by/);
    assert.doesNotMatch(shown, /illness or cortisone/);
  });

  test("a steroid injection and two days of fever are typed into the diary", async () => {
    await writes("2026-03-06", "10:00 steroid injection", "medicine");
    await writes("2026-03-10", "8:00 fever", "illness");
    await writes("2026-03-11", "8:00 fever", "illness");
  });

  test("those days are marked, the day after the injection too, in the list and on their sheets", async () => {
    await at("", ".review .days li");
    const marked = page.locator(".days li:has-text('Unlike the others')");
    await marked.first().waitFor();
    const hrefs = await marked.locator("a").evaluateAll((links) => links.map((link) => link.getAttribute("href").split("/").at(-1)));
    assert.deepEqual(hrefs, special);
    assert.match(await marked.nth(0).textContent(), /cortisone \(as noted\)/);
    assert.match(await marked.nth(1).textContent(), /the day after cortisone/);
    assert.match(await marked.nth(2).textContent(), /illness noted/);
    await marked.nth(2).locator("a").click();
    await page.waitForSelector("article.day b:has-text('Unlike the others: illness noted.')");
    assert.match(await page.textContent("article.day"), /A rise on such a day is put down to no food and no habit\./);
    assert.match(await page.textContent(".lanes"), /fever/);
  });

  test("the review tells the hours with and without them", async () => {
    await at("", ".review .days li");
    const finding = page.locator("section.finding:has(h3:has-text('Were there days unlike the others?'))");
    const sentence = await finding.locator(".sentence").textContent();
    assert.match(sentence, /Fri 6 March \(cortisone \(as noted\)\); Sat 7 March \(the day after cortisone\); Tue 10 March \(illness noted\); Wed 11 March/);
    const [, withThem, without] = /With them (\d+ h(?: \d+ min)?) of the 24 hours in range; without (\d+ h(?: \d+ min)?) of/.exec(sentence);
    // By hand: of 14 days 5 have 3 h above the range and the four have 6.75 h, (336 - 42) / 14; without them (240 - 15) / 10.
    assert.equal(withThem, "21 h");
    assert.equal(without, "22 h 30 min");
  });

  test("a rise on such a day is put down to no food and no habit", async () => {
    const answered = await asksOfDinner();
    assert.notEqual(answered, answeredBefore);
    assert.match(answered, /4 dinners with illness or cortisone noted are left out/);
    const shown = await mealsShown();
    assert.match(shown, /days with illness or cortisone noted \(12 meals left out\)/);
    assert.match(shown, /stew/);
    assert.doesNotMatch(shown, /curry/);
    // Nothing eaten is suspected behind the afternoons either.
    assert.doesNotMatch(shown, /up by/);
  });

  test("a change is agreed and a trial is drawn, as in any week", async () => {
    await practice.command(
      ..."plan c40 --candidate walk-after-dinner --how-often daily --where outside --when after-dinner --if-not tomorrow --stop-when pain".split(" "),
      "--agree",
      "I walk round the pond",
    );
    await practice.command(..."trial c40 --question walk-after-dinner --pairs 7 --keep".split(" "));
    await at("/plan", ".clients-words");
    assert.doesNotMatch(await page.textContent(".agreed"), /not to be gone on with/);
    await at("/goes-with", ".trial");
    assert.doesNotMatch(await page.textContent(".trial"), /Don't go on/);
    assert.equal(await page.locator(".trial .actions a").count(), 3, "its papers");
  });

  test("pregnancy told: ordinary goals, plan and trials stop, and the coach is told to involve the prescriber", async () => {
    await at("/facts", ".facts");
    const box = page.locator(".facts", { has: page.locator("h2:text-is('What to be careful about')") });
    await box.getByLabel("Pregnant or planning").selectOption("pregnant");
    await box.getByRole("button", { name: /^Keep/ }).click();
    await box.locator("text=Kept.").waitFor();
    const closed = page.locator(".facts", { has: page.locator("h2:text-is('What is closed now, and by what')") });
    await closed.locator("text=/clinic leads/").first().waitFor();

    await at("/plan", ".closed");
    assert.match(await page.textContent(".agreed"), /not to be gone on with now.*maternity or diabetes clinic leads/s);
    assert.match(await page.textContent(".lead-line"), /\(“?"?I walk round the pond"?”?\) does not go on/);
    assert.equal(await page.locator(".candidate").count(), 0);
    assert.equal(await page.locator("button:has-text('Agree on')").count(), 0);
    const gates = await page.textContent(".closed");
    assert.match(gates, /No target|no target, plan or trial of ours/);
    assert.match(gates, /Write to the prescriber now/);
    await page.getByRole("button", { name: /^Letter to the prescriber about it: Pregnant/ }).click();
    await page.waitForSelector(".paper-preview .paper");
    const letter = await page.textContent(".paper-preview");
    assert.match(letter, /The client is pregnant, as I was told\./);
    assert.match(letter, /please lead/);

    await at("/goes-with", ".trial");
    assert.match(await page.textContent(".trial"), /Don't go on with it now.*clinic leads/s);
    assert.equal(await page.locator(".trial .actions a").count(), 0, "no paper of a trial that is not gone on with");
    assert.equal(await page.getByRole("button", { name: /Plan this trial/ }).count(), 0);

    await at("", ".review .days li");
    const review = await page.textContent("article");
    assert.match(review, /63 to 140 mg\/dL|3\.5 to 7\.8 mmol\/L/);
    assert.match(review, /No goal, plan or trial is set here/);
    assert.doesNotMatch(review, /The goal for .* is more than/);
    await at("/helped", "article");
    assert.doesNotMatch(await page.textContent("article"), /hours in range than before/);
  });

  test("everywhere: axe by day and night, one heading, a phone's width and 200 % zoom", async () => {
    await standsEverywhere(opened, `/client/${client}/day/2026-03-10`, "article.day b");
    await standsEverywhere(opened, `/client/${client}/plan`, ".agreed .wrong");
  });

  test("no script failed and the security policy stopped nothing on the way", () => assert.deepEqual(opened.errors, []));
});

// What we agreed: by clicking and typing on the invented practice.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { keyboardOnce } from "./keyboard_once.mjs";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

let opened;
let page;
let practice;
const client = "c03"; // nothing agreed, nothing to be careful about but the eyes
const place = () => `${practice.address}/client/${client}/plan`;
const fetched = (path) => page.evaluate(async (where) => {
  const reply = await fetch(where);
  return { status: reply.status, type: reply.headers.get("content-type"), policy: reply.headers.get("content-security-policy"), size: (await reply.arrayBuffer()).byteLength };
}, path);

before(async () => {
  opened = await openedPage(/\b(401|404|409|422)\b/);
  ({ page, practice } = opened);
});
after(async () => opened?.close());

describe("What we agreed", { concurrency: false }, () => {
  test("is reached from the review by its question", async () => {
    await page.goto(`${practice.address}/client/${client}`);
    await page.click(".client-places a:has-text('What we agreed')");
    await page.waitForSelector("h1:has-text('What we agreed with Client Birch')");
    assert.match(await page.textContent(".age"), /The last reading was .* ago/);
  });

  test("candidates stand as the command gives them: gain, effort, cautions", async () => {
    const told = JSON.parse(await practice.command("plan", client, "--json"));
    assert.equal(await page.textContent(".lead-line"), told.sentence);
    const shown = await page.locator(".candidate h3").allTextContents();
    const first = told.ranked.filter(({ says }) => says !== "not_worth_it");
    assert.deepEqual(shown.slice(0, first.length), first.map(({ words }) => words));
    assert.equal(shown.length, told.ranked.length);
    const leading = page.locator(".candidate").first();
    assert.match(await leading.textContent(), /Expected: .* in range a day/);
    assert.match(await leading.textContent(), /Effort: /);
  });

  test("a closed gate says what opens it and nothing of the worth", async () => {
    const closed = page.locator(".closed > li");
    assert.ok((await closed.count()) >= 1);
    const text = await closed.first().textContent();
    assert.match(text, /Ask first|letter to the prescriber/i);
    assert.doesNotMatch(text, /in range a day|% sure/);
  });

  test("one change is agreed in the client's words, whole, by keyboard", async () => {
    const open = page.locator(".candidate button:has-text('Agree on this')").first();
    await open.focus();
    assert.equal(await keyboardOnce(page, "#agree-words", true, () => page.keyboard.press("Enter")), "agree-words");
    const typed = ["I eat the beans before the rice", "at lunch on workdays", "in the canteen", "four days a week", "the next day", "the next wear"];
    for (const text of typed) {
      await page.keyboard.type(text);
      await page.keyboard.press("Tab");
    }
    await page.getByLabel("Looked at again on").fill("2026-05-11");
    await page.getByLabel("When it is stopped at once or for good").fill("if it hurts the stomach");
    await page.getByRole("button", { name: "This is agreed" }).press("Enter");
    await page.waitForSelector(".clients-words:has-text('I eat the beans before the rice')");
    assert.match(await page.textContent(".agreed"), /four days a week/);
    const told = JSON.parse(await practice.command("plan", client, "--json"));
    assert.equal(told.agreed.words, typed[0]);
    assert.equal(told.agreed.check_on, "2026-05-11");
    // With one agreed no other is offered for agreeing.
    assert.equal(await page.locator("button:has-text('Agree on')").count(), 0);
  });

  test("the end asks how, and the change then stands among the earlier ones", async () => {
    await page.click("button:has-text('Say how it ended')");
    await page.getByLabel("It was dropped").check();
    await page.click("button:has-text('Yes, it ended so')");
    await page.waitForSelector("h2:has-text('Earlier changes') + ul li:has-text('I eat the beans before the rice')");
    assert.equal(JSON.parse(await practice.command("plan", client, "--json")).earlier.at(-1).outcome, "dropped");
  });

  test("a medicine in the words is refused, with the reason", async () => {
    await page.click("button:has-text('Agree on something else')");
    await page.getByLabel("What the client will do, in their words").fill("take more metformin");
    for (const label of ["When (after what, at what time)", "Where", "How often", "What then, on a day on which it can't be done", "When it is stopped at once or for good"]) {
      await page.getByLabel(label, { exact: true }).fill("invented");
    }
    await page.getByLabel("How it is checked").fill("invented");
    await page.click("button:has-text('This is agreed')");
    // Nothing is sent before it is chosen what the change asks for.
    await page.waitForSelector("#agree-kind:invalid");
    assert.equal(await page.locator(".agree .wrong").count(), 0);
    await page.getByLabel("What it asks of the client").selectOption("other");
    await page.click("button:has-text('This is agreed')");
    // Nor before it is answered what it does.
    await page.waitForSelector("#agree-eating:invalid");
    await page.getByLabel("What it does to eating").selectOption("nothing");
    await page.getByLabel("Does it move the body?").selectOption("no");
    await page.getByLabel("Does it touch a medicine, its dose or its time?").selectOption("no");
    await page.click("button:has-text('This is agreed')");
    await page.waitForSelector(".agree .wrong");
    assert.match(await page.textContent(".agree .wrong"), /not kept.*medicine/i);
    await page.click(".agree button:has-text('Cancel')");
  });

  test("the handout is looked at and printed; what it says is what the review says (T19)", async () => {
    await page.click("button[aria-label^='Look at it: Handout']");
    await page.waitForSelector(".paper-preview .paper");
    const paper = JSON.parse(await practice.command("handout", client, "--json"));
    assert.ok(paper.numbers <= 3);
    assert.ok(paper.grade <= 6);
    assert.equal(await page.textContent(".paper-preview h3"), paper.title);
    const shown = await page.textContent(".paper-preview .paper");
    for (const block of paper.blocks) if (block.kind === "sentence") assert.ok(shown.includes(block.text), block.text);
    assert.doesNotMatch(paper.blocks.filter(({ kind }) => kind === "sentence").map(({ text }) => text).join(" "), /%|\d\.\d/);
    assert.equal(await page.locator(".paper-preview figure svg:visible").count(), 1);
    const print = await fetched(`/api/clients/${client}/papers/handout/print`);
    assert.equal(print.status, 200);
    assert.equal(print.type, "application/pdf");
    const document = await fetched(`/api/clients/${client}/papers/handout/page`);
    assert.match(document.policy, /style-src 'sha256-/);
    assert.doesNotMatch(document.policy, /script-src|unsafe/);
  });

  test("every other paper is made, or says why it is not", async () => {
    for (const name of ["talk", "letter", "start-page", "diary-sheet-1", "diary-sheet-2"]) {
      assert.equal((await fetched(`/api/clients/${client}/papers/${name}/print`)).status, 200, name);
    }
    const rows = page.locator(".papers li:has(button[aria-label^='Look at it'])");
    assert.ok((await rows.count()) >= 11);
    await page.locator("button[aria-label^='Look at it']").last().click();
    await page.waitForSelector(".papers li:last-child .paper-preview .paper, .papers li:last-child .paper-preview .empty");
  });

  test("the letter stands one click beside what needs it, and advises on no dose (T9)", async () => {
    await page.goto(`${practice.address}/client/c09/plan`);
    await page.click("button[aria-label^='Letter to the prescriber about it']");
    await page.waitForSelector(".paper-preview .paper");
    const letter = await page.textContent(".paper-preview");
    assert.match(letter, /below 54 mg\/dL/);
    assert.doesNotMatch(letter, /reduce the dose|stop taking|increase/i);
  });

  test("with a positive eating screen the papers leave out food and numbers, and a reason is kept (T20)", async () => {
    const fewer = await page.evaluate(async () => {
      const clients = (await (await fetch("/api/clients")).json()).clients;
      for (const { handle } of clients) {
        const papers = await (await fetch(`/api/clients/${handle}/papers`)).json();
        if (papers.fewer_numbers) return handle;
      }
      return null;
    });
    assert.ok(fewer, "the invented practice has a client with an open or positive eating screen");
    await page.goto(`${practice.address}/client/${fewer}/plan`);
    await page.waitForSelector(".papers:has-text('Talk first. Offer a referral.')");
    await page.click("button[aria-label^='Look at it: Handout']");
    await page.waitForSelector(".paper-preview .paper");
    const paper = await page.textContent(".paper-preview .paper");
    assert.doesNotMatch(paper, /weight|kcal|calorie|carbohydrate|hours in range/i);
    await page.click("summary:has-text('The handout with numbers all the same')");
    await page.getByLabel("Why numbers are shown").fill("agreed with her therapist (invented)");
    await page.click("button:has-text('Keep the reason and make it')");
    await page.waitForSelector("a:has-text('Open the handout with numbers')");
    assert.match(await practice.command("note", fewer), /agreed with her therapist/);
  });

  test("a promise stands here and is kept here", async () => {
    await page.goto(place());
    await page.waitForSelector(".papers");
    await page.keyboard.press("p");
    await page.getByLabel("What is promised").fill("send the recipe list");
    await page.getByLabel("By which day").fill("2026-04-22");
    await page.getByRole("button", { name: "Keep the promise in mind" }).press("Enter");
    await page.waitForSelector("dialog li:has-text('send the recipe list')");
    await page.keyboard.press("Escape");
    await page.click("article button[aria-label='It is kept: send the recipe list']");
    await page.waitForSelector("article li:has-text('send the recipe list'):has-text('kept on')");
  });

  test("everywhere: axe by day and night, one heading, a phone's width and 200 % zoom", async () => {
    await standsEverywhere(opened, `/client/${client}/plan`, ".papers");
  });

  test("no script failed and the security policy stopped nothing on the way", () => assert.deepEqual(opened.errors, []));
});

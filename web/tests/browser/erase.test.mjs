// Erasing on request (task T25): a copy first, then nothing of the client is left, not behind a share either.
import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { after, before, describe, test } from "node:test";
import { promisify } from "node:util";
import { nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";
import { today } from "./practice.mjs";

const run = promisify(execFile);
const client = "c40";
const name = "Client Meadowrue (invented)";
const mail = "meadowrue@invented.example";
const words = "a word of mine that is to go with the client";
let opened;
let practice;
let page;
let beside; // a second window of the practice that has the client open
let address;

/** A fortnight up to the day before the demo's today. */
function wear() {
  const lines = ["Time,Glucose mg/dL"];
  for (let i = 0; i < 14 * 96; i += 1) {
    const at = new Date(Date.UTC(2026, 3, 6) + i * 900_000);
    lines.push(`${at.toISOString().slice(0, 16).replace("T", " ")},${Math.round(125 + 25 * Math.sin(i / 13))}`);
  }
  const file = join(practice.folder, "wear.csv");
  writeFileSync(file, lines.join("\n"));
  return file;
}

const whole = { viewport: { width: 1280, height: 900 } };
const statusOf = (path) => page.evaluate(async (where) => (await fetch(where)).status, path);
const eraser = () => page.locator(".facts", { has: page.locator('h2:text-is("Take their data along, or leave")') });

async function asksOfShare() {
  const context = await page.context().browser().newContext({ viewport: { width: 360, height: 740 } });
  const here = await context.newPage();
  const status = (await here.goto(address)).status();
  const text = await here.textContent("body");
  await context.close();
  return { status, text };
}

before(async () => {
  opened = await openedPage(/\b(401|403|404|409|422)\b/);
  ({ practice, page } = opened);
  const facts = join(practice.folder, "facts.json");
  writeFileSync(facts, JSON.stringify({ zones: [{ zone: "Europe/Berlin", from: null }], medicines_asked_on: "2026-04-01", consent: { given_on: "2026-04-01" } }));
  await practice.command("client", "add", name, "--handle", client, "--facts", facts);
  await practice.command("bring-in", client, wear());
  await practice.command("note", client, `${words}, ${mail}`);
});
after(async () => opened?.close());

describe("Erase on request", { concurrency: false }, () => {
  test("a client with readings, a note, a share that is looked at, and an older backup", async () => {
    await page.goto(`${practice.address}/client/${client}/shares`);
    await page.getByLabel("To whom").fill("my wife");
    await page.getByLabel("What for").fill("to help at night");
    await page.getByRole("button", { name: "Give it" }).click();
    address = await page.getByLabel("Address of the share").inputValue();
    assert.equal((await asksOfShare()).status, 200);
    await practice.command("backup", join(practice.folder, "older.backup"));
    beside = await opened.newPage(whole);
    await beside.goto(`${practice.address}/client/${client}`);
    await beside.waitForSelector(`h1:has-text('${name}')`);
  });

  test("without a copy nothing is erased, nor with another's handle", async () => {
    await page.goto(`${practice.address}/client/${client}/facts`);
    await eraser().locator("summary").click();
    await eraser().getByLabel(`Write ${client} to erase`).fill(client);
    await eraser().getByRole("button", { name: "Erase for good" }).click();
    await eraser().locator(".wrong:has-text('found no export of this client yet')").waitFor();
    await nothingSerious(page);
    const [copy] = await Promise.all([page.waitForEvent("download"), eraser().locator("a[download]").first().click()]);
    const taken = JSON.parse(readFileSync(await copy.path(), "utf8"));
    assert.ok(JSON.stringify(taken).includes(name));
    await eraser().getByLabel(`Write ${client} to erase`).fill("c01");
    await eraser().getByRole("button", { name: "Erase for good" }).click();
    await eraser().locator(".wrong").waitFor();
    assert.match(await practice.command("client", "list"), /Meadowrue/);
    assert.match(await practice.command("client", "list"), /c01/);
  });

  test("confirmed by the handle, the client leaves the list and every address of theirs", async () => {
    await eraser().getByLabel(`Write ${client} to erase`).fill(client);
    await eraser().getByRole("button", { name: "Erase for good" }).click();
    await page.waitForSelector("h1:has-text('Who needs me')");
    await page.waitForSelector(".client-row");
    assert.doesNotMatch(await page.textContent("body"), /.{0,80}Meadowrue.{0,80}/);
    for (const part of ["", "/review", "/days", "/notes", "/trust", "/papers", "/papers/handout", "/plan", "/trials", "/shares", "/imports", "/export/client.json"]) {
      assert.equal(await statusOf(`/api/clients/${client}${part}`), 404, part);
    }
    assert.equal(await statusOf("/api/clients/c01/review"), 200);
  });

  test("a window that had the client open shows nothing of them any more", async () => {
    await beside.waitForFunction((gone) => !document.body.textContent.includes(gone), "Meadowrue");
    await beside.reload();
    await beside.waitForSelector("main :text-matches('no such client|not found|found no', 'i')");
    assert.ok(!(await beside.textContent("body")).includes("Meadowrue"));
  });

  test("the holder of a share is refused at the next request and told nothing", async () => {
    const { status, text } = await asksOfShare();
    assert.ok(status === 403 || status === 404, String(status));
    assert.doesNotMatch(text, /Meadowrue|in range|mg\/dL|mmol/);
  });

  test("no file of the practice holds the name, the e-mail or the note", async () => {
    const folder = dirname(join(practice.folder, "practice", "practice"));
    const files = readdirSync(folder).filter((file) => file.startsWith("practice"));
    assert.ok(files.length > 0);
    for (const file of files) {
      const bytes = readFileSync(join(folder, file));
      for (const text of ["Meadowrue", mail, words]) {
        for (const coding of ["utf8", "utf16le"]) assert.equal(bytes.indexOf(Buffer.from(text, coding)), -1, `${text} in ${file}`);
      }
    }
    assert.match(await practice.command("check"), /Everything reads as it was written/);
  });

  test("a practice made from the older backup comes without the client", async () => {
    const practiceFile = join(practice.folder, "practice", "practice");
    const again = join(dirname(practiceFile), "again");
    const opening = ["--passphrase-file", join(dirname(practiceFile), "passphrase"), "--as-of", today];
    const erased = readdirSync(dirname(practiceFile)).filter((file) => /erased/.test(file)).map((file) => join(dirname(practiceFile), file));
    await run(join(process.env.TRACEWRIGHT_BUILD, "tracewright"), ["--practice", again, ...opening, "restore", join(practice.folder, "older.backup"), "--erased", ...erased]);
    const { stdout } = await run(join(process.env.TRACEWRIGHT_BUILD, "tracewright"), ["--practice", again, ...opening, "client", "list"]);
    assert.doesNotMatch(stdout, /Meadowrue/);
    assert.match(stdout, /c01/);
  });

  test("no script failed and the security policy stopped nothing on the way", () => assert.deepEqual(opened.errors, []));
});

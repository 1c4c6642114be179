// A client with a wear in each unit: the edges of each, and the unit they think in everywhere (task T4).
import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, describe, test } from "node:test";
import { openedPage } from "./opened.mjs";

let opened;
let practice;
let page;

const shown = async (path, ready) => {
  await page.goto(practice.address + path);
  await page.waitForSelector(ready);
  return page.locator("main").innerText();
};

before(async () => {
  opened = await openedPage();
  ({ practice, page } = opened);
});

after(async () => {
  await opened?.close();
});

describe("Both units", { concurrency: false }, () => {
  test("a client with a wear in each unit sees the one they think in, and each edge counts (T4)", async () => {
    const wear = (name, unit, first, levels) => {
      const lines = [`Time,Glucose ${unit}`];
      for (let i = 0; i < 8 * 96; i += 1) {
        lines.push(`${new Date(first + i * 900_000).toISOString().slice(0, 16).replace("T", " ")},${levels[i % levels.length]}`);
      }
      const file = join(practice.folder, name);
      writeFileSync(file, lines.join("\n"));
      return file;
    };
    await practice.command("client", "add", "Client Teasel (invented)", "--handle", "c43", "--zone", "Europe/Berlin");
    await practice.command("bring-in", "c43", wear("mg.csv", "mg/dL", Date.UTC(2026, 2, 20), [70, 180]));
    await practice.command("bring-in", "c43", wear("mmol.csv", "mmol/L", Date.UTC(2026, 3, 10), ["3.9", "10.0"]));
    const both = async (unit, other) => {
      for (const day of ["2026-03-24", "2026-04-14"]) {
        const text = await shown(`/client/c43/day/${day}`, ".plot canvas");
        assert.match(text, /24 h .*in range/, day);
        assert.ok(text.includes(unit) && !text.includes(other), `${day}: ${unit} alone`);
      }
      for (const [path, ready] of [["/client/c43", ".review .days a"], ["/client/c43/trust", ".trust h2"]]) {
        const text = await shown(path, ready);
        assert.ok(text.includes(unit), path);
        // A rule's own edge may be named in both.
        const odd = text.split("\n").filter((line) => line.includes(other) && !line.includes(unit));
        assert.deepEqual(odd, [], path);
      }
    };
    await both("mmol/L", "mg/dL");
    await page.goto(`${practice.address}/client/c43/facts`);
    const person = page.locator(".facts", { has: page.locator('h2:text-is("About them")') });
    await person.getByLabel("Unit they think in").selectOption("mg/dL");
    await person.getByRole("button", { name: /^Keep/ }).click();
    await person.locator("text=Kept.").waitFor();
    await both("mg/dL", "mmol/L");
    // What is given away keeps the unit each was reported in.
    const out = join(practice.folder, "copy");
    await practice.command("client", "export", "c43", "--out", out);
    const csv = readFileSync(join(out, "readings.csv"), "utf8");
    assert.match(csv, /,180,mg\/dL,/);
    assert.match(csv, /,10(\.0+)?,mmol\/L,/);
  });

  test("no script failed and the security policy stopped nothing", () => assert.deepEqual(opened.errors, []));
});

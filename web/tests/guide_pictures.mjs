// The pictures of docs/guide, on the invented practice; each bears a line that says so.
// Usage: node tests/guide_pictures.mjs BUILD [OUT]   (OUT: docs/guide/pictures if not given)
import { mkdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { launchOptions, signIn } from "./browser/browser.mjs";
import { inventedPlate } from "./browser/invented_plate.mjs";
import { servedPractice } from "./browser/practice.mjs";

const [build, out = fileURLToPath(new URL("../../docs/guide/pictures", import.meta.url))] = process.argv.slice(2);
if (!build) {
  console.error("usage: node tests/guide_pictures.mjs BUILD [OUT]");
  process.exit(2);
}
/** What a picture may weigh at most, bytes: the guide is read over slow lines too. */
const heaviest = 120_000;
const width = 760;
mkdirSync(out, { recursive: true });

const practice = await servedPractice(build);
const browser = await chromium.launch(launchOptions);
const page = await (await browser.newContext({ viewport: { width, height: 900 } })).newPage();
page.setDefaultTimeout(60_000);

/** Height of the line below each picture that says it is invented, px. */
const invented = 24;

/**
 * A strip of the page from the top of one thing, `height` high at most and as far as `last` reaches, ending between
 * two lines and never through one; below it the line that it is invented.
 */
async function picture(name, from, height, last = "main") {
  // Until nothing that is still being read moves it.
  const tallNow = () => page.evaluate(() => document.body.scrollHeight);
  for (let before = -1, now = await tallNow(); before !== now; [before, now] = [now, await tallNow()]) await page.waitForTimeout(500);
  const { top, tall } = await page.evaluate(
    ([from, height, last]) => {
      const box = (element) => element.getBoundingClientRect();
      const first = from ? box(from).top + scrollY : 12;
      const top = Math.max(0, first - 12);
      const end = Math.min(top + height, Math.ceil(box(last).bottom + scrollY) + 12);
      const whole = [...document.querySelectorAll("main canvas, main svg, main img, main input, main button, main select, main textarea")].map(box);
      const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
      while (texts.nextNode()) {
        if (!texts.currentNode.data.trim()) continue;
        const range = document.createRange();
        range.selectNodeContents(texts.currentNode);
        whole.push(...range.getClientRects());
      }
      const kept = whole.map((rect) => ({ top: rect.top + scrollY, bottom: rect.bottom + scrollY })).filter((rect) => rect.bottom > rect.top);
      let bottom = end;
      for (let cut = true; cut; ) {
        const through = kept.filter((rect) => rect.top < bottom && rect.bottom > bottom && rect.top > first);
        cut = through.length > 0;
        if (cut) bottom = Math.min(...through.map((rect) => rect.top)) - 4;
      }
      return { top, tall: Math.round(bottom - top) };
    },
    [from ? await page.locator(from).first().elementHandle() : null, height, await page.locator(last).last().elementHandle()],
  );
  await page.evaluate(
    ([y, high]) => {
      const line = document.createElement("p");
      line.id = "invented";
      line.textContent = "Invented practice: nobody here is real.";
      document.body.append(line);
      const look = {
        position: "absolute", left: "0", right: "0", top: `${y}px`, height: `${high}px`, margin: "0", padding: "0 8px", zIndex: "10",
        boxSizing: "border-box", borderTop: "1px solid #606872", font: `12px/${high - 1}px sans-serif`, textAlign: "right", background: "#ffffff", color: "#1f242a",
      };
      Object.assign(line.style, look);
    },
    [top + tall, invented],
  );
  const path = join(out, `${name}.png`);
  await page.screenshot({ path, fullPage: true, clip: { x: 0, y: top, width, height: tall + invented } });
  await page.evaluate(() => document.getElementById("invented").remove());
  const { size } = statSync(path);
  console.log(`${name}.png ${Math.round(size / 1000)} kB`);
  if (size > heaviest) throw new Error(`${name}.png is heavier than ${heaviest} bytes`);
}

async function at(path, ready) {
  await page.goto(practice.address + path);
  await page.waitForSelector(ready);
}

/** One day whose date may be read either way, with a level beyond the limit and a row that is no number. */
function oneDay() {
  const lines = ["Invented sensor;", "Zeit;Glukose mmol/L"];
  for (let i = 0; i < 288; i += 1) {
    const clock = `${String(Math.floor(i / 12)).padStart(2, "0")}:${String((i % 12) * 5).padStart(2, "0")}`;
    lines.push(`03.02.2026 ${clock};${i === 50 ? "LOW" : i === 100 ? "abc" : `7,${i % 10}`}`);
  }
  const file = join(practice.folder, "invented-day.csv");
  writeFileSync(file, lines.join("\r\n"));
  return file;
}

async function firstHour() {
  await page.goto(practice.address);
  await page.waitForSelector("#coach");
  await picture("sign-in", null, 520);
  await signIn(page, practice.passphrase);
  await at("/new-client", "#new-name");
  await page.fill("#new-name", "Client Sorrel (invented)");
  await picture("new-client", "h1", 420);
  await practice.command("client", "add", "Client Sorrel (invented)", "--handle", "c40");
  await at("/client/c40/bring-in", "#files");
  await page.setInputFiles("#files", oneDay());
  await page.waitForSelector("legend");
  await picture("one-question", ".questions", 330);
  await page.getByRole("button", { name: "The day comes first" }).click();
  await page.waitForSelector(".row-account");
  await picture("every-row", ".row-account", 420);
}

async function monday() {
  await at("/", ".client-row");
  await picture("who-needs-me", "h1", 640);
  await at("/client/c09", ".review .days a");
  await picture("review-top", "h1", 560);
  await page.getByRole("button", { name: /^Answer/ }).first().click();
  await picture("answer", "h2:has-text('To answer first')", 440);
}

async function wear() {
  await at("/client/c09/diary/2026-04-20", "#diary-text");
  await page.fill("#diary-text", "6:10 porridge and banana, walked 20 min; dinner 7:30 zorbo");
  await page.waitForSelector(".understood li:nth-child(3)");
  await picture("diary-message", "h2:has-text('Write')", 520);
  await at("/client/c08/diary/2026-04-17", ".meal-photos");
  await page.locator(".entries > li:has-text('fish, potatoes, beans') input[type=file]").setInputFiles(await inventedPlate(page));
  await page.locator(".small-photos button").click();
  await page.locator(".big-photo img").evaluate((image) => image.decode());
  await picture("meal-photo", ".entries > li:has(.big-photo)", 640, ".entries > li:has(.big-photo)");
  await at("/client/c09/trust", ".trust h2");
  await picture("trust", "h1", 620);
  await at("/client/c07/sensor", ".finding");
  await picture("how-it-ended", "h2:has-text('Each wear')", 640);
}

async function review() {
  await at("/client/c09", ".review .days a");
  await picture("hours-bar", "h2:has-text('What these days say')", 460);
  await picture("usual-day", "h2:has-text('the usual day')", 820);
  await at("/client/c09/day/2026-04-18", ".plot canvas");
  await picture("day-sheet", "h1", 800);
  await at("/client/c03/plan", ".papers");
  await picture("might-be-agreed", "h2:has-text('What might be agreed')", 480);
  await at("/client/c01/plan", ".papers");
  await page.click("button:has-text('Turn the screen to the client')");
  await page.waitForSelector(".client-view .paper");
  await picture("turned", "h1", 560);
  await page.click("button:has-text('Turn the screen back')");
}

async function trial() {
  await at("/client/c10/goes-with", ".trials");
  await page.getByRole("button", { name: "Plan this trial: Does a walk after dinner change the rise after dinner?" }).click();
  await page.fill("#trial-pairs", "7");
  await page.waitForSelector(".trial-says:has-text('0.0156')");
  await picture("trial-plan", "form.agree", 660);
  await page.getByRole("button", { name: "Draw the order by lot and keep the trial" }).click();
  await page.waitForSelector(".trial .trial-days");
  await picture("trial-days", ".trial", 480);
  await practice.commandOn("2026-03-19T07:00Z", "trial", "c06", "--question", "walk-after-dinner", "--pairs", "7", "--seed", "20260320", "--keep");
  await at("/client/c06/goes-with", ".trial .finding");
  await picture("trial-read", ".trial", 520);
}

try {
  for (const part of [firstHour, monday, wear, review, trial]) await part();
} finally {
  await browser.close();
  await practice.stop();
}

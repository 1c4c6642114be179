// How soon the review is there, how much script is sent. Not a test: it measures.
// Usage: node bench/first_paint.mjs BUILD [RUNS]
import { gzipSync } from "node:zlib";
import { chromium } from "playwright-core";
import { launchOptions, signIn } from "../tests/browser/browser.mjs";
import { servedPractice } from "../tests/browser/practice.mjs";

const [build, runs = "15"] = process.argv.slice(2);
const middle = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const practice = await servedPractice(build);
const browser = await chromium.launch(launchOptions);
try {
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
  await page.goto(practice.address);
  await signIn(page, practice.passphrase);
  const paints = [];
  const readable = [];
  for (let run = 0; run < Number(runs); ++run) {
    await page.goto(`${practice.address}/client/c09`);
    await page.waitForSelector(".review h1");
    readable.push(await page.evaluate(() => performance.now()));
    paints.push(await page.evaluate(() => performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? NaN));
  }
  console.log(`first paint: median ${middle(paints).toFixed(0)} ms; review readable: median ${middle(readable).toFixed(0)} ms of ${runs}`);

  const script = await (await fetch(`${practice.address}/page.js`)).arrayBuffer();
  console.log(`script: ${(script.byteLength / 1000).toFixed(1)} kB, ${(gzipSync(Buffer.from(script)).byteLength / 1000).toFixed(1)} kB compressed`);
} finally {
  await browser.close();
  await practice.stop();
}

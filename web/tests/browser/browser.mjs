import { chromium } from "playwright-core";
import { tellInteractions } from "./interactions.mjs";

/** Debian's Chromium, started with nothing that asks anything of the network. */
export const launchOptions = {
  executablePath: process.env.TRACEWRIGHT_CHROMIUM ?? "/usr/bin/chromium",
  args: [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ],
};

/** Signs the demo practice's coach in from the sign-in page. */
export async function signIn(page, passphrase) {
  await page.fill("#coach", "o1");
  await page.fill("#passphrase", passphrase);
  await page.press("#passphrase", "Enter");
  await page.waitForSelector("h1:has-text('Who needs me')");
}

// Where a file is named, how long each click and key took until the page was painted anew is written into it.
if (process.env.TRACEWRIGHT_INTERACTIONS) tellInteractions(chromium, process.env.TRACEWRIGHT_INTERACTIONS);

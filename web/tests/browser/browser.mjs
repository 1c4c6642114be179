import { existsSync } from "node:fs";
import { chromium } from "playwright-core";

/** Debian's Chromium; it is started with nothing that asks anything of the network. */
export const chromiumPath = process.env.TRACEWRIGHT_CHROMIUM ?? "/usr/bin/chromium";
export const hasChromium = existsSync(chromiumPath);

/** Runs `work` with a browser and closes it whatever happens. */
export async function inBrowser(work) {
  const browser = await chromium.launch({
    executablePath: chromiumPath,
    args: [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
  try {
    return await work(browser);
  } finally {
    await browser.close();
  }
}

/** Signs the demo practice's coach in from the sign-in page. */
export async function signIn(page, passphrase = "an invented passphrase") {
  await page.fill("#coach", "o1");
  await page.fill("#passphrase", passphrase);
  await page.press("#passphrase", "Enter");
  await page.waitForSelector("text=Who needs me");
}

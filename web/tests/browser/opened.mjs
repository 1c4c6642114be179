// What each test file of the page begins and ends with.
import { chromium } from "playwright-core";
import { launchOptions, signIn } from "./browser.mjs";
import { servedPractice } from "./practice.mjs";

/** The invented practice served, a browser, and a page on which its coach has signed in. */
export async function openedPage(expected = /401|422/) {
  const practice = await servedPractice();
  const browser = await chromium.launch(launchOptions);
  const errors = [];
  let signedIn; // by passphrase once: the rest go on in the same session
  const newPage = async (look = { viewport: { width: 1280, height: 900 } }) => {
    const context = await browser.newContext({ ...look, storageState: signedIn });
    context.setDefaultTimeout(60_000); // a busy machine is no failure
    const page = await context.newPage();
    page.on("pageerror", (error) => errors.push(String(error)));
    page.on("console", (message) => {
      if (message.type() === "error" && !expected.test(message.text())) errors.push(message.text());
    });
    await page.goto(practice.address);
    if (signedIn) await page.waitForSelector("h1:has-text('Who needs me')");
    else await signIn(page, practice.passphrase);
    signedIn ??= await context.storageState();
    return page;
  };
  return {
    practice,
    errors,
    page: await newPage(),
    newPage,
    close: async () => {
      await browser.close();
      await practice.stop();
    },
  };
}

/** The looks that every place has to stand: a phone, 200 % zoom of a small window, dark. */
export const looks = [
  { viewport: { width: 360, height: 740 } },
  { viewport: { width: 640, height: 740 } },
  { viewport: { width: 1280, height: 900 }, colorScheme: "dark" },
];

// Pictures of each place: desktop, phone, dark, grey print. Usage: node tests/screenshots.mjs ADDRESS OUT CLIENT DATE
import { mkdirSync } from "node:fs";
import { inBrowser, signIn } from "./browser/browser.mjs";

const [address, out, client = "c09", date = "2026-04-18"] = process.argv.slice(2);
mkdirSync(out, { recursive: true });
const kinds = {
  desktop: { viewport: { width: 1280, height: 900 } },
  phone: { viewport: { width: 360, height: 740 }, deviceScaleFactor: 2 },
  dark: { viewport: { width: 1280, height: 900 }, colorScheme: "dark" },
};
const places = { caseload: "/", review: `/client/${client}`, day: `/client/${client}/day/${date}`, trace: `/client/${client}/trace` };

await inBrowser(async (browser) => {
  for (const [kind, options] of Object.entries(kinds)) {
    const context = await browser.newContext(options);
    const page = await context.newPage();
    page.on("console", (message) => message.type() === "error" && console.log(kind, message.text()));
    page.on("pageerror", (error) => console.log(kind, String(error)));
    await page.goto(address);
    await page.waitForSelector("#coach");
    await page.screenshot({ path: `${out}/sign-in-${kind}.png` });
    await signIn(page);
    for (const [name, path] of Object.entries(places)) {
      await page.goto(address + path);
      await page.waitForSelector("h1:not(.problem h1)");
      await page.waitForTimeout(900);
      await page.screenshot({ path: `${out}/${name}-${kind}.png`, fullPage: name !== "review" });
      if (name === "review") await page.screenshot({ path: `${out}/review-whole-${kind}.png`, fullPage: true });
      if (kind === "desktop") {
        await page.emulateMedia({ media: "print" });
        await page.addStyleTag?.({ content: "" }).catch(() => {});
        await page.screenshot({ path: `${out}/${name}-print.png`, fullPage: true });
        await page.emulateMedia({ media: "screen" });
      }
    }
    await context.close();
  }
});

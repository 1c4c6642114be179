// What holds on every place of the page.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Own rule: nothing serious or critical of WCAG 2 A to 2.2 AA as far as axe-core sees it. */
export async function nothingSerious(on) {
  // By the debugging protocol, which the page's security policy does not bind.
  await on.evaluate(axe + ";0");
  const found = await on.evaluate(async () => {
    const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
    const { violations } = await globalThis.axe.run(document, { runOnly: tags, resultTypes: ["violations"] });
    return violations
      .filter(({ impact }) => impact === "serious" || impact === "critical")
      .map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).join(", ")}`);
  });
  assert.deepEqual(found, []);
}

/** Nothing wider than the window: no one should have to scroll sideways. */
export async function fitsTheWidth(on) {
  const [wide, window] = await on.evaluate(() => [document.documentElement.scrollWidth, innerWidth]);
  assert.ok(wide <= window, `${wide} of ${window} pixels at ${on.url()}`);
}

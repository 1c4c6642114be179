// Photos of meals: chosen or dropped beside a meal, seen small and bigger, removed after a question; by keyboard; on no
// screen that is turned to the client. The pictures are drawn by the browser, invented.
import assert from "node:assert/strict";
import { after, before, describe, test } from "node:test";
import { inventedPlate } from "./invented_plate.mjs";
import { keyboardOnce } from "./keyboard_once.mjs";
import { nothingSerious } from "./on_every_place.mjs";
import { openedPage } from "./opened.mjs";
import { standsEverywhere } from "./stands_everywhere.mjs";

const client = "c09";
const day = "2026-04-18";
let opened;
let page;
let picture;

const meal = () => page.locator(".entries > li", { has: page.locator(".meal-photos") }).first();
const small = () => meal().locator(".small-photos button");
const open = async () => {
  await page.goto(`${opened.practice.address}/client/${client}/diary/${day}`);
  await page.waitForSelector("#diary-text:focus");
  await page.waitForSelector(".meal-photos");
};
const added = async (count) => {
  await meal().getByText("Photo kept, without place, device or time.").waitFor();
  await page.waitForFunction((n) => document.querySelector(".meal-photos").querySelectorAll(".small-photos img").length === n, count);
};

before(async () => {
  opened = await openedPage(/401|404|422/);
  page = opened.page;
  // From the start: asked to stand in for the window as the key is pressed, the browser may open its own first.
  page.on("filechooser", () => {});
  picture = await inventedPlate(page);
});

after(async () => {
  await opened?.close();
});

describe("photos of meals", { concurrency: false }, () => {
  test("one is chosen, kept, and shown small beside its meal", async () => {
    await open();
    assert.equal(await small().count(), 0);
    const [chooser] = await Promise.all([page.waitForEvent("filechooser"), meal().getByRole("button", { name: /^Add a photo: / }).press("Enter")]);
    await chooser.setFiles(picture);
    await added(1);
    const image = small().first().locator("img");
    await image.evaluate((one) => one.decode());
    assert.deepEqual(await image.evaluate((one) => [one.naturalWidth, one.naturalHeight]), [400, 300]);
    await nothingSerious(page);
  });

  test("one is dropped onto the meal", async () => {
    const data = await page.evaluateHandle(
      ([bytes]) => {
        const transfer = new DataTransfer();
        transfer.items.add(new File([Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0))], "dropped.jpg", { type: "image/jpeg" }));
        return transfer;
      },
      [picture.buffer.toString("base64")],
    );
    await meal().locator(".meal-photos").dispatchEvent("drop", { dataTransfer: data });
    await added(2);
  });

  test("is opened bigger by keyboard with the meal's words, and closed by Escape", async () => {
    await small().first().press("Enter");
    const big = meal().locator(".big-photo img");
    await big.waitFor();
    assert.match(await big.getAttribute("alt"), /^Photo 1 of 2 of: \S/);
    assert.ok((await big.boundingBox()).width > 300);
    await nothingSerious(page);
    await page.keyboard.press("Tab");
    await meal().getByRole("button", { name: "Remove this photo" }).press("Escape");
    await big.waitFor({ state: "detached" });
  });

  test("what is no photo is refused in words, and nothing is kept", async () => {
    await meal().locator("input[type=file]").setInputFiles({ name: "a.gif", mimeType: "image/gif", buffer: Buffer.from("GIF89a, invented") });
    await meal().getByText("found a GIF picture, expected a JPEG or PNG picture").waitFor();
    assert.equal(await small().count(), 2);
  });

  test("fits a phone, a zoomed window and the dark", async () => {
    await standsEverywhere(opened, `/client/${client}/diary/${day}`, ".big-photo img", async (at) => {
      await at.locator(".small-photos button").first().press("Enter");
      await at.locator(".big-photo img").evaluate((one) => one.decode());
    });
  });

  test("stands among the copies for the client", async () => {
    await page.goto(`${opened.practice.address}/client/${client}/facts`);
    const [file] = await Promise.all([page.waitForEvent("download"), page.getByRole("link", { name: /^Photo of the meal of Sat 18 April/ }).first().click()]);
    assert.match(file.suggestedFilename(), /photo-\d+\.jpg$/);
  });

  test("is removed for good after one question, and the keyboard stands where photos are added", async () => {
    await open();
    await small().first().press("Enter");
    await meal().getByRole("button", { name: "Remove this photo" }).press("Enter");
    await meal().getByText("Remove this photo? It does not come back.").waitFor();
    await meal().getByRole("button", { name: "Keep it" }).press("Enter");
    assert.equal(await small().count(), 2);
    await meal().getByRole("button", { name: "Remove this photo" }).press("Enter");
    const remove = () => meal().getByRole("button", { name: "Yes, remove it" }).press("Enter");
    assert.match(await keyboardOnce(page, ".big-photo", false, remove), /^Add a photo: /);
    await meal().getByText("Photo removed.").waitFor();
    await page.waitForFunction(() => document.querySelector(".meal-photos").querySelectorAll(".small-photos img").length === 1);
    assert.match(await page.evaluate(() => document.activeElement.getAttribute("aria-label")), /^Add a photo: /);
  });

  test("the screen turned to the client shows none", async () => {
    await page.goto(`${opened.practice.address}/client/${client}`);
    await page.waitForSelector("h1");
    await page.getByRole("button", { name: /Turn the screen/ }).click();
    await page.waitForSelector(".client-view .paper");
    assert.equal(await page.locator("img").count(), 0);
    await page.goto(`${opened.practice.address}/client/${client}/diary/${day}`);
    await page.waitForSelector(".client-view .paper");
    assert.equal(await page.locator("img").count(), 0);
    assert.equal(await page.locator(".meal-photos").count(), 0);
  });

  test("nothing went wrong meanwhile", () => {
    assert.deepEqual(opened.errors, []);
  });
});

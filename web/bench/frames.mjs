// How smoothly 14 days of one-minute readings move and come closer under real input: the browser is told of a mouse, a
// wheel, keys and fingers as the system would tell it, and tells when each of its frames began. Not a test: it measures.
// Usage: node bench/frames.mjs BUILD [SECONDS]
import { loadavg } from "node:os";
import { chromium } from "playwright-core";
import { launchOptions, signIn } from "../tests/browser/browser.mjs";
import { servedPractice } from "../tests/browser/practice.mjs";
import { addLongWears } from "./long_wears.mjs";

const [build, seconds = "4"] = process.argv.slice(2);
/** The browser's clock tells tenths of a millisecond: a frame of 16.67 is told as 16.6 or 16.7. */
const oneFrame = 16.75;

const practice = await servedPractice(build);
const browser = await chromium.launch(launchOptions);

async function opened(look) {
  const context = await browser.newContext(look);
  const page = await context.newPage();
  await page.goto(practice.address);
  await signIn(page, practice.passphrase);
  await page.goto(`${practice.address}/client/m14/trace`);
  await page.waitForSelector(".plot canvas");
  await page.locator(".u-over").scrollIntoViewIfNeeded();
  return { page, cdp: await context.newCDPSession(page) };
}

const wait = (ms) => new Promise((resolve) => setTimeout(resolve, ms));
/** A mouse and a system don't wait for the page: neither does this, as long as the page is not far behind. */
let underway = 0;
async function tell(cdp, method, input) {
  underway += 1;
  const done = cdp.send(method, input).finally(() => (underway -= 1));
  while (underway > 8) await done;
}

async function allTold() {
  while (underway > 0) await wait(5);
}

/** Does `step` again and again and gives the lengths of the frames meanwhile, with the main thread's work for each. */
async function framesWhile({ page, cdp }, step) {
  await page.waitForTimeout(500);
  // The processor's time of the main thread, so that what else runs on the machine is not counted.
  await cdp.send("Performance.setTimeDomain", { timeDomain: "threadTicks" });
  await cdp.send("Performance.enable");
  const metric = async (name) => (await cdp.send("Performance.getMetrics")).metrics.find((one) => one.name === name).value;
  const working = await metric("TaskDuration");
  await page.evaluate(() => {
    globalThis.frameTimes = [];
    globalThis.drawn = 0;
    const canvas = document.querySelector(".plot canvas").getContext("2d");
    const clear = canvas.clearRect;
    canvas.clearRect = function (...box) {
      globalThis.drawn += 1;
      return clear.apply(this, box);
    };
    const tick = (at) => {
      globalThis.frameTimes.push(at);
      globalThis.nextFrame = requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  });
  const until = performance.now() + Number(seconds) * 1000;
  for (let count = 0; performance.now() < until; ++count) await step(count);
  await allTold();
  const { times, drawn } = await page.evaluate(() => {
    cancelAnimationFrame(globalThis.nextFrame);
    delete document.querySelector(".plot canvas").getContext("2d").clearRect;
    return { times: globalThis.frameTimes, drawn: globalThis.drawn };
  });
  const worked = ((await metric("TaskDuration")) - working) * 1000;
  await cdp.send("Performance.disable");
  return { lengths: times.slice(1).map((at, index) => at - times[index]), drawn, worked: worked / drawn };
}

function told(what, { lengths, drawn, worked }) {
  const sorted = [...lengths].sort((a, b) => a - b);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))].toFixed(1);
  const over = (100 * lengths.filter((length) => length > oneFrame).length) / lengths.length;
  console.log(
    `${what}: ${lengths.length} frames, ${drawn} drawn anew; median ${at(0.5)} ms, p95 ${at(0.95)}, longest ${at(1)}, ` +
      `over 16.7 ms: ${over.toFixed(1)} %; main thread ${worked.toFixed(1)} ms for each drawn`,
  );
}

try {
  await addLongWears(practice);
  console.log(`load ${loadavg()[0].toFixed(2)} before; Chromium ${browser.version()}, headless, no graphics card, 60 frames a second`);
  const desk = await opened({ viewport: { width: 1280, height: 900 } });
  const { page } = desk;
  const box = await page.locator(".u-over").boundingBox();
  const middle = [box.x + box.width / 2, box.y + box.height / 2];

  const [x, y] = middle;
  const control = 2;

  await page.mouse.move(x, y);
  told("wheel, closer and wider", await framesWhile(desk, async (count) => {
    const deltaY = count % 120 < 60 ? -20 : 20;
    await tell(desk.cdp, "Input.dispatchMouseEvent", { type: "mouseWheel", x, y, deltaX: 0, deltaY, modifiers: control });
    await wait(8);
  }));

  await page.locator(".sheet").focus();
  await page.keyboard.press("0");
  await page.keyboard.press("+");
  await page.mouse.down();
  told("drag over a week", await framesWhile(desk, async (count) => {
    const across = x + 300 * Math.sin(count / 50);
    await tell(desk.cdp, "Input.dispatchMouseEvent", { type: "mouseMoved", x: across, y, button: "left", buttons: 1 });
    await wait(8);
  }));
  await page.mouse.up();

  await page.locator(".sheet").focus();
  await page.keyboard.press("0");
  for (let times = 0; times < 3; ++times) await page.keyboard.press("+");
  told("arrow keys held down", await framesWhile(desk, async (count) => {
    const key = count % 40 < 20 ? "ArrowRight" : "ArrowLeft";
    await tell(desk.cdp, "Input.dispatchKeyEvent", { type: "rawKeyDown", key, code: key, windowsVirtualKeyCode: key === "ArrowRight" ? 39 : 37, autoRepeat: true });
    await wait(33);
  }));
  await page.close();

  const phone = await opened({ viewport: { width: 360, height: 740 }, deviceScaleFactor: 2, hasTouch: true, isMobile: true });
  const small = await phone.page.locator(".u-over").boundingBox();
  const touch = (type, ...across) =>
    tell(phone.cdp, "Input.dispatchTouchEvent", {
      type,
      touchPoints: across.map((part, id) => ({ x: small.x + small.width * part, y: small.y + small.height / 2, id })),
    });
  await touch("touchStart", 0.4, 0.6);
  told("two fingers on a phone", await framesWhile(phone, async (count) => {
    const apart = 0.25 - 0.2 * Math.cos(count / 40);
    await touch("touchMove", 0.5 - apart, 0.5 + apart);
    await wait(8);
  }));
  await touch("touchEnd");
  await allTold();
  console.log(`load ${loadavg()[0].toFixed(2)} after`);
} finally {
  await browser.close();
  await practice.stop();
}

// From each click and key of the browser tests to the next paint: how long, and which took longest. Not a test: it measures.
// Usage: node bench/interactions.mjs BUILD [FILE, from web/]...
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const [build, ...files] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), "tracewright-interactions-"));
const told = join(folder, "interactions");
writeFileSync(told, "");
const before = loadavg()[0].toFixed(2);
const script = fileURLToPath(new URL("../../scripts/test-page", import.meta.url));
let failed = false;
for (const file of files.length > 0 ? files : [undefined]) {
  const words = ["browser", resolve(build), ...(file ? [file] : [])];
  const run = spawnSync(script, words, { env: { ...process.env, TRACEWRIGHT_INTERACTIONS: told }, stdio: ["ignore", "ignore", "inherit"] });
  failed ||= run.status !== 0;
}

const lines = readFileSync(told, "utf8").trim().split("\n").filter(Boolean).map((line) => JSON.parse(line));
rmSync(folder, { recursive: true, force: true });
/** One interaction has several events, such as pointerdown, pointerup and click: the longest tells it. */
const longest = new Map();
for (const event of lines.filter(({ kind }) => kind === "event")) {
  const key = `${event.test} ${event.visit} ${event.interactionId}`;
  if ((longest.get(key)?.duration ?? -1) < event.duration) longest.set(key, event);
}
const slow = [...longest.values()].sort((a, b) => a.duration - b.duration);
const ended = lines.filter(({ kind }) => kind === "ended").length;
// Those that were painted within 16 ms are not told one by one.
const quick = Math.max(0, ended - slow.length);
const at = (share, durations) => durations[Math.min(durations.length - 1, Math.floor(share * durations.length))];
const durations = slow.map(({ duration }) => duration);
const all = [...Array(quick).fill(16), ...durations];
console.log(`load ${before} before, ${loadavg()[0].toFixed(2)} after${failed ? "; some tests failed, so some interactions are missing" : ""}`);
console.log(`interactions: ${all.length}, of them ${quick} under 16 ms`);
console.log(`all: p50 ${at(0.5, all)} ms, p95 ${at(0.95, all)} ms, longest ${at(1, all)} ms`);
console.log(`of 16 ms and longer alone: p50 ${at(0.5, durations)} ms, p95 ${at(0.95, durations)} ms`);
console.log(`over 100 ms: ${durations.filter((duration) => duration > 100).length}`);
for (const { duration, name, waited, worked, target, place, test } of slow.slice(-25).reverse()) {
  console.log(`${duration} ms (waited ${waited.toFixed(0)}, worked ${worked.toFixed(0)}) ${name} ${target} at ${place}, ${test}`);
}

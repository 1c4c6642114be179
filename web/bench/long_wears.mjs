// Clients who wore a sensor for long, brought into the invented practice by the command line, as a coach at a terminal would.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { today } from "../tests/browser/practice.mjs";

const zone = "Europe/Berlin";
const civil = new Intl.DateTimeFormat("sv-SE", { timeZone: zone, dateStyle: "short", timeStyle: "short" });
const wearDays = 14;

/** The same numbers at each run, from 0 to below 1. */
function draws(seed) {
  let state = seed;
  return () => {
    state = (state * 1_664_525 + 1_013_904_223) % 2 ** 32;
    return state / 2 ** 32;
  };
}

/** An invented trace: three rises a day, a slow wander, a sensor's noise, a short low every third night, a gap at each change of sensor. */
function rowsOf(from, to, everyMinutes, draw) {
  const rows = [];
  let wander = 0;
  for (let at = from; at < to; at += everyMinutes * 60_000) {
    const day = Math.floor(at / 86_400_000);
    const hour = (at % 86_400_000) / 3_600_000;
    wander = 0.995 * wander + 4 * (draw() - 0.5);
    let level = 118 + wander + 6 * (draw() - 0.5);
    for (const meal of [6, 11, 17.5]) {
      const since = hour - meal;
      if (since > 0) level += 130 * since * Math.exp(-since / 0.8);
    }
    if (day % 3 === 0 && hour > 1 && hour < 1.5) level = 58;
    rows.push(`${civil.format(at)},${Math.round(Math.max(41, Math.min(390, level)))}`);
  }
  return rows;
}

/** Days of readings each, until 40 minutes before the practice's today. */
export const longClients = {
  m14: { name: "Client Minutes (invented)", days: 14, every: 1 },
  m90: { name: "Client Many Minutes (invented)", days: 90, every: 1 },
  f90: { name: "Client Many Fives (invented)", days: 90, every: 5 },
};

export async function addLongWears(practice) {
  const end = Date.parse(today.replace("Z", ":00Z")) - 40 * 60_000;
  for (const [handle, { name, days, every }] of Object.entries(longClients)) {
    const folder = join(practice.folder, handle);
    mkdirSync(folder);
    const draw = draws(20_260_420 + days + every);
    const begin = end - days * 86_400_000;
    for (let from = begin, wear = 1; from < end; from += wearDays * 86_400_000, ++wear) {
      const to = Math.min(from + (wearDays * 24 - 1) * 3_600_000, end);
      const head = ["Invented for a measurement: no real person", "", "Time,Glucose (mg/dL)"];
      writeFileSync(join(folder, `invented-wear-${wear}.csv`), `${[...head, ...rowsOf(from, to, every, draw)].join("\n")}\n`);
    }
    await practice.command("client", "add", name, "--handle", handle);
    const told = await practice.command("bring-in", handle, folder, "--zone", zone, "--date-order", "year", "--this-client");
    const stored = [...told.matchAll(/stored (\d+)/g)].reduce((sum, [, count]) => sum + Number(count), 0);
    const expected = (days * 1440) / every;
    if (stored < 0.98 * expected) throw new Error(`${handle}: of about ${expected} readings ${stored} were stored:\n${told}`);
  }
}

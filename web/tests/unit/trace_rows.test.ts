import assert from "node:assert/strict";
import { test } from "node:test";
import { markItems, placed } from "../../src/lanes";
import { civilTime, legible, minutesOf, ticksOf } from "../../src/tick_choice";
import { columnsOf, instantsOf, linesOf, type ReadTrace, rowAt, unfolded } from "../../src/trace_rows";

const midnight = 1_776_463_200;
const hour = 3600;
const clock = (hours: number) => `${String(hours % 24).padStart(2, "0")}:00`;
const sheet: ReadTrace = {
  zone: "Europe/Berlin",
  unit: "mg/dL",
  band_edges: [54, 70, 180, 250],
  edge_words: ["54", "70", "180", "250"],
  bands: ["very low", "low", "in range", "high", "very high"],
  ticks: Array.from({ length: 25 }, (_, hours) => ({ at: midnight + hours * hour, label: clock(hours) })),
  day_borders: [
    { at: midnight, label: "Sat 18 April" },
    { at: midnight + 24 * hour, label: "Sun 19 April" },
  ],
  wears: [
    { label: "wear 1", at: [midnight, midnight + 900, midnight + 1800], value: [100, null, 110], labels: ["00:00", "", "00:30"], beyond_limit: [] },
    { label: "wear 2", at: [midnight + 300], value: [90], labels: ["00:05"], beyond_limit: [{ at: midnight + 300, label: "below 90 mg/dL" }] },
  ],
  level_words: [],
  words: new Map([90, 100, 110].map((level) => [level, `${level} mg/dL`])),
  lanes: [],
  marks: [],
  finger_pricks: [],
  last_reading: null,
};

const rowsOf = (trace: ReadTrace) => instantsOf(trace).map((at) => rowAt(trace, at));

test("wears stay apart on one time line, and a gap stays a gap", () => {
  assert.deepEqual(
    rowsOf(sheet).map((row) => [row.at - midnight, row.label, ...row.values]),
    [
      [0, "00:00", 100, null],
      [300, "00:05", null, 90],
      [900, "", null, null],
      [1800, "00:30", 110, null],
    ],
  );
  // Undefined where another wear was read, null where this one has a gap: uPlot breaks the line only there.
  assert.deepEqual(columnsOf(linesOf(sheet))[1], [100, undefined, null, 110]);
});

test("one sensor after another shares a line that doesn't join them; one beside another has its own", () => {
  assert.equal(linesOf(sheet).length, 2);
  const later = { ...sheet, wears: sheet.wears.map((wear, which) => ({ ...wear, at: wear.at.map((at) => at + which * hour) })) };
  const [line, ...others] = linesOf(later);
  assert.equal(others.length, 0);
  assert.deepEqual(line?.map((wear) => wear.label), ["wear 1", "wear 2"]);
  assert.deepEqual(columnsOf(linesOf(later)), [
    [0, 900, 1800, 1801, 3900].map((since) => midnight + since),
    [100, null, 110, null, 90],
  ]);
});

test("each instant follows from the steps of the reply", () => {
  const reply = { ...sheet, wears: [{ label: "wear 1", begin: midnight, steps: [60, 3, 301, 1, 299, 2], value: [1, 2, 3, 4, 5, 6, 7], beyond_limit: [] }] };
  assert.deepEqual(unfolded(reply).wears[0]?.at.map((at) => at - midnight), [0, 60, 120, 180, 481, 780, 1079]);
  assert.deepEqual(unfolded({ ...reply, wears: reply.wears.map((wear) => ({ ...wear, steps: [], value: [1] })) }).wears[0]?.at, [midnight]);
});

// docs/safety.md 2: a value beyond the sensor's limit is never told as a value.
test("a reading beyond the limit is told as beyond it", () => {
  assert.deepEqual(rowsOf(sheet).map((row) => row.told), [["100 mg/dL", ""], ["", "below 90 mg/dL"], ["", ""], ["110 mg/dL", ""]]);
});

// 181 mg/dL is high, and is written 10.0: what is drawn is not what is told.
test("levels are told in the server's words and drawn as they are", () => {
  const wear = { label: "wear 1", begin: midnight, steps: [], value: [1005], labels: ["00:00"], beyond_limit: [] };
  const mmol = unfolded({ ...sheet, unit: "mmol/L", wears: [wear], level_words: [{ level: 1005, words: "10.0 mmol/L" }] });
  assert.deepEqual(rowAt(mmol, midnight).told, ["10.0 mmol/L"]);
  assert.deepEqual(columnsOf(linesOf(mmol))[1], [1005]);
});

test("labels never touch, and round times of the clock go first", () => {
  const wide = legible(ticksOf(sheet), { from: midnight, to: midnight + 24 * hour }, 600);
  assert.deepEqual(
    wide.map((tick) => tick.label),
    ["00:00", "03:00", "06:00", "09:00", "12:00", "15:00", "18:00", "21:00", "00:00"],
  );
  const close = legible(ticksOf(sheet), { from: midnight + hour, to: midnight + 4 * hour }, 600);
  assert.deepEqual(
    close.map((tick) => tick.label),
    ["01:00", "02:00", "03:00", "04:00"],
  );
});

test("while the trace moves, the days that bear a name stay the same ones", () => {
  const days = 14;
  const fortnight = {
    ...sheet,
    ticks: Array.from({ length: days * 24 + 1 }, (_, hours) => ({ at: midnight + hours * hour, label: clock(hours) })),
    day_borders: Array.from({ length: days + 1 }, (_, day) => ({ at: midnight + day * 24 * hour, label: `day ${day}` })),
  };
  const ticks = ticksOf(fortnight);
  const named = (from: number, to: number) =>
    legible(ticks, { from: midnight + from * hour, to: midnight + to * hour }, 500)
      .map((tick) => tick.label)
      .filter((label) => label.startsWith("day"));
  const positions = Array.from({ length: 19 }, (_, step) => step * 7);
  const ever = [...new Set(positions.flatMap((from) => named(from, from + 200)))];
  assert.ok(ever.length >= 4 && ever.length < days, ever.join());
  for (const from of positions) {
    const there = ever.filter((label) => Number(label.slice(4)) * 24 >= from && Number(label.slice(4)) * 24 <= from + 200);
    assert.deepEqual(named(from, from + 200).sort(), there.sort());
  }
});

test("a changed clock is told where an hour has a width, and touches no other label", () => {
  const changed = { ...sheet, ticks: [...sheet.ticks, { at: midnight + 2.25 * hour, label: "03:15 (clock changed)" }].sort((a, b) => a.at - b.at) };
  const shown = legible(ticksOf(changed), { from: midnight, to: midnight + 24 * hour }, 200).map((tick) => tick.label);
  assert.ok(shown.includes("03:15 (clock changed)"), shown.join());
  assert.equal(minutesOf("03:15 (clock changed)"), null);
  const ticks = ticksOf(changed);
  for (const width of [200, 300, 500, 800, 1200]) {
    const there = legible(ticks, { from: midnight, to: midnight + 24 * hour }, width);
    const at = there.findIndex(({ label }) => label === "03:15 (clock changed)");
    for (const beside of [there[at - 1], there[at + 1]]) {
      if (beside) assert.ok((Math.abs(beside.at - (there[at]?.at ?? 0)) / (24 * hour)) * width >= 90, `${width}: ${beside.label}`);
    }
  }
  // Over ninety days an hour is less than a pixel.
  const many = legible(ticks, { from: midnight - 45 * 24 * hour, to: midnight + 45 * 24 * hour }, 235).map((tick) => tick.label);
  assert.ok(!many.includes("03:15 (clock changed)"), many.join());
});

test("a clock of 12 hours is read like one of 24", () => {
  assert.deepEqual(["12:00 am", "2:40 am", "12:15 pm", "11:45 pm"].map(minutesOf), [0, 160, 735, 1425]);
});

test("about when: the server's day and its last tick before", () => {
  assert.equal(civilTime(sheet, midnight + 2.5 * hour), "Sat 18 April, 02:00");
});

test("lane items stand where they began and give way to the next one", () => {
  const items = placed(
    [
      { at: midnight + 12 * hour, end: null, text: "lunch", label: "12:00" },
      { at: midnight - 2 * hour, end: midnight + 6 * hour, text: "sleep", label: "22:00" },
      { at: midnight + 30 * hour, end: null, text: "tomorrow", label: "06:00" },
    ],
    { from: midnight, to: midnight + 24 * hour },
  );
  assert.deepEqual(
    items.map((item) => [item.text, item.from, item.to, item.room]),
    [
      ["sleep", 0, 0.25, 0.5],
      ["lunch", 0.5, 0.5, 0.5],
    ],
  );
});

test("a very low within its low is boxed without words of its own, and the low keeps the room for its words", () => {
  const mark = (kind: string, label: string, from: number, to: number) => ({ at: midnight + from * hour, end: midnight + to * hour, from: clock(from), to: clock(to), kind, label });
  const items = placed(
    markItems([mark("low", "low 2 h, very low 1 h", 2, 4), mark("very low", "very low", 2, 3), mark("suspect", "warm-up", 12, 13)]),
    { from: midnight, to: midnight + 24 * hour },
  );
  assert.deepEqual(
    items.map((item) => item.text),
    ["low 2 h, very low 1 h", "", "warm-up"],
  );
  assert.equal(items[0]?.room, 10 / 24);
  assert.match(items[1]?.told ?? "", /02:00 to 03:00/);
});

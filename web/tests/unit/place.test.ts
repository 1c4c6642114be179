import assert from "node:assert/strict";
import { test } from "node:test";
import { addressOf, placeOf } from "../../src/place";

test("every place has an address that leads back to it", () => {
  for (const place of [
    { at: "caseload" },
    { at: "review", client: "c 1/ü" },
    { at: "day", client: "c1", date: "2026-04-18" },
    { at: "trace", client: "c1" },
    { at: "goes-with", client: "c1" },
    { at: "plan", client: "c1" },
    { at: "helped", client: "c1" },
    { at: "who-did-what", client: "c1" },
    { at: "practice-book" },
  ] as const) {
    assert.deepEqual(placeOf(addressOf(place)), place);
  }
});

test("an address that no place has is nowhere, however it is broken", () => {
  for (const path of ["/x", "/client", "/client/c1/day", "/client/c1/day/18.4.", "/client/%E0%A4%A", "/client/c1/trace/x"]) {
    assert.deepEqual(placeOf(path), { at: "nowhere" }, path);
  }
});

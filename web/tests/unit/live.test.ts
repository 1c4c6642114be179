import assert from "node:assert/strict";
import { test } from "node:test";
import { sentenceOf } from "../../src/ask_server";
import { changeOf, concerns } from "../../src/live";
import { words } from "../../src/words";

test("a change concerns its client, the whole practice, or everyone", () => {
  const ofOne = changeOf('{"client":"c1","what":"readings"}');
  assert.ok(concerns(ofOne, "c1"));
  assert.ok(!concerns(ofOne, "c2"));
  assert.ok(concerns(ofOne, null));
  assert.ok(concerns(changeOf('{"client":null,"what":"client_added"}'), "c2"));
});

test("a change that can't be read is taken as one of everything", () => {
  for (const data of ["", "x", "[]", "{}", '{"client":7}']) assert.ok(concerns(changeOf(data), "c1"), data);
});

test("a problem is told by the server's own sentence where it has one", () => {
  assert.equal(sentenceOf(404, "found no client of this handle"), "found no client of this handle");
  assert.equal(sentenceOf(404, ""), words.problem.notFound);
  assert.equal(sentenceOf(500, ""), words.problem.unknown);
});

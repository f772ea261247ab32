import assert from "node:assert/strict";
import { test } from "node:test";
import { effortOf, effortPath } from "../src/model/effort.ts";
import type { Letter } from "../src/model/outbox.ts";

const letter = (body: object, more: Partial<Letter> = {}): Letter => ({
  key: "k", path: effortPath("sat-24"), how: "PUT", body, words: "", at: 1, held: 0, timed: false, refused: null, ...more,
});

test("what is on its way is shown before what is kept, what was refused is not", () => {
  const kept = [{ person: "a07", effort: 5 }];
  assert.equal(effortOf(kept, [], "sat-24", "a07"), 5);
  assert.equal(effortOf(kept, [], "sat-24", "a08"), null);
  assert.equal(effortOf(kept, [letter({ person: "a07", effort: 8 })], "sat-24", "a07"), 8);
  assert.equal(effortOf(kept, [letter({ person: "a08", effort: 8 })], "sat-24", "a07"), 5);
  assert.equal(effortOf(kept, [letter({ person: "a07", effort: 8 }, { refused: "no" })], "sat-24", "a07"), 5);
  assert.equal(effortOf(kept, [letter({ person: "a07", effort: 8 }, { path: effortPath("other") })], "sat-24", "a07"), 5);
});

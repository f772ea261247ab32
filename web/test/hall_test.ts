import assert from "node:assert/strict";
import { test } from "node:test";
import { withOut } from "../src/views/hall/faults.tsx";
import { replaced } from "../src/views/hall/places_table.tsx";

test("a fault keeps its words when more of the kind go out, and is gone when all work", () => {
  const faults = [{ equipment: "rower", out: 1, text: "chain" }];
  assert.deepEqual(withOut(faults, "rower", 2), [{ equipment: "rower", out: 2, text: "chain" }]);
  assert.deepEqual(withOut(faults, "rower", 0), []);
  assert.deepEqual(withOut(faults, "rack", 1), [...faults, { equipment: "rack", out: 1, text: "" }]);
});

test("one of a list is replaced or taken out", () => {
  assert.deepEqual(replaced([1, 2, 3], 1, 9), [1, 9, 3]);
  assert.deepEqual(replaced([1, 2, 3], 1, null), [1, 3]);
});

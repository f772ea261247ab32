import assert from "node:assert/strict";
import { test } from "node:test";
import { actionsOn, isMark, limitsOf, mergePeople, newId, withCell, withLimits } from "../src/model/people_change.ts";

const ana = { id: "a01", name: "Ana Invented", "run 400 m": "1:40", sex: "f" };
const bo = { id: "a02", name: "Bo Invented" };

test("an import changes the cells it fills, adds who is new, and takes nobody out", () => {
  const merged = mergePeople([ana, bo], [
    { id: "a01", name: "Ana Invented", "run 400 m": "1:35" },
    { id: "Cy Invented", name: "Cy Invented" },
  ]);
  assert.deepEqual(merged.rows[0], { ...ana, "run 400 m": "1:35" });
  assert.deepEqual(merged.rows[1], bo);
  assert.equal(merged.rows.length, 3);
  assert.deepEqual([merged.added, merged.changed, merged.same], [["Cy Invented"], ["Ana Invented"], []]);
});

test("somebody without an id is known by name, and keeps the id", () => {
  const merged = mergePeople([ana, bo], [{ id: "Bo Invented", name: "Bo Invented", age: "31" }]);
  assert.deepEqual(merged.rows[1], { id: "a02", name: "Bo Invented", age: "31" });
  assert.deepEqual(merged.changed, ["Bo Invented"]);
});

test("of two people of one name none is guessed", () => {
  const twin = { id: "a03", name: "Bo Invented" };
  assert.equal(mergePeople([bo, twin], [{ name: "Bo Invented", age: "31" }]).rows.length, 3);
});

test("a row that says nothing new is named as the same", () => {
  assert.deepEqual(mergePeople([ana], [{ id: "a01", name: "Ana Invented" }]).same, ["Ana Invented"]);
});

test("limits and their actions are read and written in the same order", () => {
  const row = { limits: "no-floor head-down@2027-05-31", actions: "Standing versions | Head up \\| talk test" };
  const limits = limitsOf(row);
  assert.deepEqual(limits, [
    { id: "no-floor", until: "", action: "Standing versions" },
    { id: "head-down", until: "2027-05-31", action: "Head up | talk test" },
  ]);
  assert.deepEqual(withLimits({}, limits), row);
  assert.deepEqual(withLimits(row, []), {});
});

test("an action that ended is not said any more, on its last day it still is", () => {
  const row = { limits: "wrist@2027-05-31", actions: "Fists" };
  assert.deepEqual(actionsOn(row, "2027-05-31"), ["Fists"]);
  assert.deepEqual(actionsOn(row, "2027-06-01"), []);
});

test("a limit without an action still sends the person to the coach", () => {
  assert.deepEqual(actionsOn({ limits: "wrist" }, "2027-05-31"), ["see the coach"]);
});

test("an emptied cell is gone", () => {
  assert.deepEqual(withCell({ name: "Ana", age: "3" }, "age", " "), { name: "Ana" });
});

test("marks are told from what is known of a person and from standing versions", () => {
  assert.ok(isMark("run 400 m"));
  assert.ok(isMark("vo2max_ml_kg_min"));
  assert.ok(!isMark("push"));
  assert.ok(!isMark("height_cm"));
});

test("somebody new gets the next id of the gym's kind, or one made of the name", () => {
  assert.equal(newId([ana, bo], "Cy"), "a03");
  assert.equal(newId([{ id: "jo" }], "Siân Petra"), "sian-petra");
  assert.equal(newId([{ id: "jo" }], "Jo"), "jo-2");
});

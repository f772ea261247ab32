import assert from "node:assert/strict";
import { test } from "node:test";
import type { Comer } from "../src/model/brief.ts";
import { classWords, gatherAlike, sortComers, standingWords, tagsOf } from "../src/views/next_class/standing.ts";
import { count, dayWords, daysBetween, listWords, sentence, shortDay, timeAfter } from "../src/ui/words.ts";

const regular: Comer = {
  id: "a01", name: "Ana Invented", actions: [], late_s: 0, standing: "regular", sessions: 9, last_came: "2027-05-11", marks: 4,
};

test("a newcomer and somebody back after weeks are told, a regular is not", () => {
  assert.equal(standingWords({ ...regular, standing: "first", last_came: null }, "2027-05-15"), "first class on record");
  assert.equal(standingWords({ ...regular, standing: "back", last_came: "2027-04-05" }, "2027-05-15"), "back after 5 weeks");
  assert.equal(standingWords(regular, "2027-05-15"), null);
});

test("those with an action, a delay, no marks or news come first, the others by name", () => {
  const people = [
    regular,
    { ...regular, id: "a02", actions: ["no overhead"] },
    { ...regular, id: "a03", late_s: 180 },
    { ...regular, id: "a04", marks: 0 },
  ];
  const { told, others } = sortComers(people);
  assert.deepEqual(told.map((each) => each.id), ["a02", "a03", "a04"]);
  assert.deepEqual(others, [regular]);
});

test("many newcomers are told of together, whoever has an action or comes late by themselves", () => {
  const first: Comer = { ...regular, standing: "first", last_came: null };
  const many = ["b1", "b2", "b3", "b4", "b5", "b6"].map((id) => ({ ...first, id }));
  const late = { ...first, id: "b7", late_s: 120 };
  const careful = { ...first, id: "b8", actions: ["no jumps"] };
  assert.deepEqual(tagsOf(late, null), ["first class on record", "2 min late"]);
  const { single, alike } = gatherAlike([...many, late, careful], "2027-05-15");
  assert.deepEqual(single, [late, careful]);
  assert.deepEqual(alike, [{ tag: "first class on record", people: many }]);
  assert.deepEqual(gatherAlike(many.slice(1), "2027-05-15").alike, []);
});

test("the class is said in a line, without what is nought", () => {
  assert.equal(classWords([regular]), "1 comes");
  assert.equal(
    classWords([regular, { ...regular, standing: "first" }, { ...regular, actions: ["no jumps"], late_s: 60 }]),
    "3 come, 1 for the first time, 1 with something to avoid, 1 late",
  );
});

test("days, times and lists are said the same on every machine", () => {
  assert.equal(dayWords("2027-05-15"), "Saturday 15 May 2027");
  assert.equal(dayWords("soon"), "soon");
  assert.equal(shortDay("2027-05-15"), "Sat 15 May");
  assert.equal(daysBetween("2027-02-28", "2027-03-01"), 1);
  assert.equal(timeAfter("09:00", 4350), "10:13");
  assert.equal(timeAfter("23:50", 900), "00:05");
  assert.equal(count(1, "week", "weeks"), "1 week");
  assert.equal(listWords(["Ana", "Bo", "Cy"]), "Ana, Bo and Cy");
  assert.equal(sentence("sign in first"), "Sign in first.");
});

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { keptHouse } from "../src/model/gym.ts";
import { houseQuestions, shorthandsOf, wordsOf } from "../src/model/house_change.ts";

const { body } = JSON.parse(readFileSync("../tests/golden/api/house.json", "utf8")) as { readonly body: unknown };
const { house } = keptHouse(body, "");

test("everything that the program lets a house decide is asked, and today's answer is among the answers", () => {
  assert.deepEqual(houseQuestions.map(({ key }) => key).sort(), Object.keys(house).filter((key) => key !== "words").sort());
  for (const { key, answers } of houseQuestions) assert.ok(answers.some(([value]) => value === house[key]), key);
});

test("the gym's own words are kept once each, with what they mean", () => {
  assert.deepEqual(wordsOf([{ word: " Willow ", movement: "run" }, { word: "", movement: "" }]), { words: { willow: "run" } });
  assert.deepEqual(wordsOf([{ word: "willow", movement: "run" }, { word: "Willow", movement: "row" }]), { wrong: "'willow' stands there twice." });
  assert.deepEqual(wordsOf([{ word: "willow", movement: "" }]), { wrong: "Say what 'willow' means." });
  assert.deepEqual(wordsOf([{ word: "", movement: "run" }]), { wrong: "Say which word means run." });
  assert.deepEqual(shorthandsOf({ ...house, words: { willow: "run" } }), [{ word: "willow", movement: "run" }]);
});

import assert from "node:assert/strict";
import { test } from "node:test";
import { placesOf } from "../src/charts/forecast_strip.tsx";
import { coverageWords, measureText, verdictOf } from "../src/charts/forecast_words.ts";
import type { PastScore } from "../src/model/brief.ts";

const timed: PastScore = {
  date: "2027-05-01", board: "five", title: "Five", piece: "", score: "6:10", version: "", effort: 8, flag: "",
  value: 370, days: null, forecast: { measure: "seconds", p10: 350, p50: 380, p90: 420, reps_per_round: 0 },
};

test("a time below the range is better, above it is less; reps the other way round", () => {
  assert.equal(verdictOf(timed), "as forecast");
  assert.equal(verdictOf({ ...timed, value: 340 }), "better");
  assert.equal(verdictOf({ ...timed, value: 430 }), "less");
  const reps: PastScore = { ...timed, forecast: { measure: "reps", p10: 80, p50: 90, p90: 99, reps_per_round: 20 } };
  assert.equal(verdictOf({ ...reps, value: 70 }), "less");
  assert.equal(verdictOf({ ...reps, value: 104 }), "better");
});

test("what cannot be compared has no verdict and does not count", () => {
  assert.equal(verdictOf({ ...timed, value: null }), null);
  assert.equal(verdictOf({ ...timed, forecast: null }), null);
  assert.equal(coverageWords([{ ...timed, value: null }]), null);
});

test("days that do not teach are not counted", () => {
  assert.match(coverageWords([timed, { ...timed, value: 500 }, { ...timed, flag: "ill", value: 900 }]) ?? "", /^1 of 2 /);
});

test("numbers stand as on a score sheet", () => {
  const of = (measure: "seconds" | "reps" | "kg", reps_per_round = 0) => ({ measure, p10: 0, p50: 0, p90: 0, reps_per_round });
  assert.equal(measureText(of("seconds"), 370), "6:10");
  assert.equal(measureText(of("reps", 20), 92), "4+12");
  assert.equal(measureText(of("reps"), 44), "44");
  assert.equal(measureText(of("kg"), 61.5), "61.5 kg");
});

test("band and dot share one axis that holds both", () => {
  assert.deepEqual(placesOf(10, 20, 15), { low: 0, high: 1, value: 0.5, days: null });
  assert.deepEqual(placesOf(10, 20, 30), { low: 0, high: 0.5, value: 1, days: null });
  assert.deepEqual(placesOf(10, 10, null), { low: 0, high: 0, value: null, days: null });
  assert.deepEqual(placesOf(10, 20, 15, [5, 25]), { low: 0.25, high: 0.75, value: 0.5, days: [0, 1] });
});

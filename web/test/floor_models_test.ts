import assert from "node:assert/strict";
import { test } from "node:test";
import { countWords, listWith, minutesLate, type Arriving } from "../src/model/arrivals.ts";
import { millisecondsInto } from "../src/model/finish.ts";
import type { Moment } from "../src/model/clock.ts";
import { stepsOf, usualCard } from "../src/model/emergency.ts";
import type { Letter } from "../src/model/outbox.ts";
import { bodyAt } from "../src/model/outbox.ts";
import { byVersion, type ResultLine } from "../src/model/results.ts";
import { dueOf, outWith, sortOut, type RunLength, type Runner } from "../src/model/runners.ts";
import { clock, finishText, prefilled, question, scoreText, secondsOf, shownScores, type ScoreForecast, type ScoreLine } from "../src/model/scores.ts";

const letter = (path: string, body: object, more: Partial<Letter> = {}): Letter => ({
  key: "k",
  path,
  how: "POST",
  body,
  words: "",
  at: 0,
  held: 0,
  timed: false,
  refused: null,
  ...more,
});
const person = (id: string, state: Arriving["state"] = "expected"): Arriving => ({
  id,
  name: id.toUpperCase(),
  state,
  late_s: 0,
  walk_in: false,
  told: [],
});

test("ticks that are on their way are on the list already, refused ones are not", () => {
  const kept = { people: [person("b"), person("a", "here")] };
  const path = "/api/classes/c/arrivals";
  const outbox = [
    letter(path, { person: "b", state: "here", late_s: 300 }),
    letter(path, { person: "a", state: "away" }, { refused: "no" }),
    letter("/api/classes/c/walk-ins", { name: "New" }, { key: "x1" }),
    letter("/api/classes/other/arrivals", { person: "a", state: "away" }),
  ];
  const list = listWith(kept, outbox, "c");
  assert.deepEqual(
    list.map((each) => [each.name, each.state, each.late_s]),
    [["A", "here", 0], ["B", "here", 300], ["New", "here", 0]],
  );
  assert.equal(countWords(list), "3 here, 0 expected");
  const over = listWith(kept, [letter(`${path}/nobody-else`, {})], "c");
  assert.equal(countWords(over), "1 here, 0 expected, 1 not coming");
});

test("somebody is late only on the day of the class and after its start", () => {
  const at = (hours: number, minutes: number) => new Date(2027, 4, 15, hours, minutes);
  assert.equal(minutesLate("2027-05-15", "09:00", at(8, 55)), 0);
  assert.equal(minutesLate("2027-05-15", "09:00", at(9, 7)), 7);
  assert.equal(minutesLate("2027-05-14", "09:00", at(9, 7)), 0);
  assert.equal(minutesLate("2027-05-15", null, at(9, 7)), 0);
});

const runner: Runner = { id: "a", name: "A", out_since_s: 30 };
const run: RunLength = { id: "a", p10_s: 90, p50_s: 100, p90_s: 120 };

test("a runner is due within the range and late well beyond it", () => {
  const out = { runner, run, since: 0 };
  assert.deepEqual([60, 95, 130, 149].map((s) => dueOf(out, s * 1000)), ["running", "due", "due", "due"]);
  assert.equal(dueOf(out, 151_000), "late");
  assert.equal(dueOf({ ...out, run: null }, 9e9), "running");
});

test("who is out counts what is still on its way, the late ones first", () => {
  const other = { ...runner, id: "b", name: "B", out_since_s: null };
  const outbox = [letter("/api/classes/c/runners", { person: "b", act: "out" }, { at: 590_000 })];
  const outs = outWith({ classId: "c", list: [runner, other], lengths: [run, { ...run, id: "b" }], asked: 600_000 }, outbox);
  assert.deepEqual(sortOut(outs, 730_000).map((each) => each.runner.id), ["a", "b"]);
  const back = [letter("/api/classes/c/runners", { person: "a", act: "in" })];
  assert.equal(outWith({ classId: "c", list: [runner], lengths: [], asked: 0 }, back)[0]?.since, null);
});

test("what is told late is told with how long ago it was", () => {
  assert.deepEqual(bodyAt(letter("", { act: "out" }, { at: 1000, timed: true }), 31_400), { act: "out", ago_s: 30 });
  assert.deepEqual(bodyAt(letter("", { act: "out" }), 31_400), { act: "out" });
});

const forecast = { measure: "reps" as const, p10: 459, p50: 600, p90: 720, reps_per_round: 51 };

const expected = (more: Partial<ScoreForecast>) => ({ forecast: { ...forecast, ...more }, capped: 0, reps_at_cap: null, loads: [], load_step: null });

test("a score is filled in from the forecast, so that few taps are left", () => {
  const draft = prefilled("rounds", expected({}));
  assert.equal(scoreText(draft), "11+39");
  const time = prefilled("time", expected({ measure: "seconds", p50: 751.4, reps_per_round: 0 }));
  assert.equal(scoreText(time), "12:31");
  assert.equal(scoreText({ ...time, capped: true, rounds: 3, reps: 40 }), "cap, 3+40");
  const sums = prefilled("kcal", expected({ measure: "kcal", p50: 102, reps_per_round: 0 }));
  assert.equal(scoreText(sums), "102 kcal", "the intervals together");
  assert.equal(scoreText({ ...sums, parts: [20, 18, 17, 16, 16] }), "87 kcal");
  const load = prefilled("load", expected({ measure: "kg", p50: 61.3, reps_per_round: 0 }));
  assert.equal(scoreText(load), "61.5 kg");
});

test("a score far from the forecast is asked about, one near it is not", () => {
  const draft = prefilled("rounds", expected({}));
  const believed = { forecast, least: 198, most: 981, holds: null, loads: [], load_step: null };
  assert.equal(question(draft, believed), null);
  assert.equal(question({ ...draft, rounds: 38, reps: 0 }, believed), "Forecast 9+0 to 14+6, really 38+0?");
  const time = { form: "time" as const, capped: true, parts: [1], rounds: 1, reps: 0 };
  assert.equal(question(time, believed), null, "the cap says enough");
});

test("times are read as people type them", () => {
  assert.deepEqual(["12:31", "751", "1:02:10", " 0:45 "].map(secondsOf), [751, 751, 3730, 45]);
  assert.deepEqual(["12:75", "fast", "", "1:2:3:4"].map(secondsOf), [null, null, null, null]);
  assert.deepEqual([0, 59, 60, 3730].map(clock), ["0:00", "0:59", "1:00", "1:02:10"]);
  assert.equal(finishText(751_999), "12:31");
});

test("the newest line of each person shows, what is on its way over it", () => {
  const line = (person_: string, score: string): ScoreLine => ({
    number: 1, version: 1, person: person_, piece: "", score, done_as: "", effort: null, flag: "", entered_by: "", saved_by: null, saved_at: null,
  });
  const outbox = [letter("/api/classes/c/scores", { person: "b", score: "9:59", piece: "" }, { held: 5 })];
  const shown = shownScores([line("a", "1:00"), line("a", "2:00"), line("b", "3:00")], outbox, "c", "");
  assert.equal(shown.get("a")?.score, "2:00");
  assert.deepEqual([shown.get("b")?.score, shown.get("b")?.kept, shown.get("b")?.held], ["9:59", null, 5]);
});

test("results are gathered by version, the largest first", () => {
  const of = (id: string, done_as: string): ResultLine => ({ id, name: id, score: "1", done_as, said_as: done_as, own: "first", before: null, luck: 0 });
  assert.deepEqual(byVersion([of("a", "x"), of("b", "y"), of("c", "y")]).map(([version]) => version), ["y", "x"]);
});

test("the usual emergency card says to call for help and that local rules come first", () => {
  assert.match(usualCard, /Call the emergency number/);
  assert.match(usualCard, /local rules come before/);
  assert.deepEqual(stepsOf(" one \n\n two\n"), ["one", "two"]);
});

test("a finish counts from the start signal of the piece that the clock of the class is in", () => {
  const cue = { name: "A", kind: "work", into_ms: 60_000 };
  const moment = (state: Moment["state"], changed: object = {}): Moment =>
    ({ state, index: 3, cue: { ...cue, ...changed }, elapsed: 5000, length: null, left: null }) as unknown as Moment;
  assert.equal(millisecondsInto(moment("running"), "A"), 65_000);
  assert.equal(millisecondsInto(moment("paused"), "A"), 65_000);
  assert.equal(millisecondsInto(moment("running"), "B"), null);
  assert.equal(millisecondsInto(moment("over"), "A"), null);
  assert.equal(millisecondsInto(moment("running", { kind: "count-in" }), "A"), null);
});

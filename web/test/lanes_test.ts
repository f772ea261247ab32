import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { axisOf, laneHeight } from "../src/charts/axis.ts";
import { kindOf } from "../src/charts/kinds.ts";
import { bitsOfStep, lanesOf, pieceStarts, stepAt, stretchOfPiece } from "../src/charts/lanes.ts";
import { lanePaths, queuePath } from "../src/charts/paths.ts";
import { gathered, gravestFirst } from "../src/charts/finding_words.ts";
import { clockText, personSentence, rangeText, scoreText, slackText } from "../src/charts/words.ts";
import { movements } from "../src/model/gym.ts";
import { rehearsal, type RehearsedPiece, type RehearsedStep } from "../src/model/rehearsal.ts";
import { jumpOf } from "../src/views/board/jumps.ts";

const bodyOf = (name: string): unknown =>
  (JSON.parse(readFileSync(`../tests/golden/api/${name}.json`, "utf8")) as { body: unknown }).body;
const thursday = rehearsal(bodyOf("rehearse"), "");
const catalogue = new Map(movements(bodyOf("movements"), "").map((each) => [each.id, each]));

const step = (times: Partial<RehearsedStep>): RehearsedStep => ({
  round: 0,
  step: 0,
  line: 2,
  version: "pull-up",
  load_kg: null,
  amount: 9,
  share: 1,
  start_s: 0,
  end_s: 100,
  work_s: 100,
  rest_s: 0,
  wait_s: 0,
  sets: 1,
  ...times,
});

test("a step is its wait, then its sets with the rest spread between them", () => {
  const bits = bitsOfStep(step({ start_s: 10, end_s: 110, work_s: 60, rest_s: 20, wait_s: 20, sets: 2.1 }), "pull", 300);
  assert.deepEqual(bits, [
    { from: 310, to: 330, kind: "wait" },
    { from: 330, to: 360, kind: "pull" },
    { from: 360, to: 370, kind: "rest" },
    { from: 370, to: 400, kind: "pull" },
    { from: 400, to: 410, kind: "rest" },
  ]);
});

test("the bits of a step fill it from its start to its end", () => {
  for (const sets of [0, 1, 3.4, 12]) {
    const bits = bitsOfStep(step({ start_s: 5, end_s: 95, work_s: 41, rest_s: 30, wait_s: 7, sets }), "push", 0);
    assert.equal(bits[0]?.from, 5);
    assert.ok(Math.abs((bits.at(-1)?.to ?? 0) - 95) < 1e-9);
    bits.slice(1).forEach((bit, index) => {
      assert.ok(Math.abs(bit.from - (bits[index]?.to ?? 0)) < 1e-9);
    });
    const worked = bits.filter((bit) => bit.kind === "push").reduce((sum, bit) => sum + bit.to - bit.from, 0);
    assert.ok(Math.abs(worked - 41) < 1e-9);
  }
});

test("means that do not add up never run past the step", () => {
  const bits = bitsOfStep(step({ end_s: 30, work_s: 50, wait_s: 40, sets: 2 }), "legs", 0);
  assert.deepEqual(bits.at(-1), { from: 15, to: 30, kind: "legs" });
  assert.deepEqual(bitsOfStep(step({ end_s: 0 }), "legs", 0), []);
});

test("every person has a lane in the order of the rehearsal, inside the class", () => {
  const lanes = lanesOf(thursday, catalogue);
  assert.deepEqual(
    lanes.map((lane) => lane.id),
    thursday.people.map((person) => person.id),
  );
  for (const lane of lanes) {
    assert.ok(lane.bits.length > 0);
    for (const bit of lane.bits) assert.ok(bit.to > bit.from && bit.to <= thursday.timetable.p90_s + 1);
  }
  assert.equal(lanes[0]?.bits[0]?.kind, "run");
});

test("pieces start where their box does, in seconds of the class", () => {
  const later = {
    ...thursday,
    timetable: {
      ...thursday.timetable,
      boxes: thursday.timetable.boxes.map((box) => ({ ...box, start_p50_s: 480, end_p50_s: 1560 })),
    },
  };
  assert.deepEqual(pieceStarts(later), [480]);
  assert.deepEqual(stretchOfPiece(later.timetable, 0), { from: 480, to: 1560 });
  assert.equal(stretchOfPiece(later.timetable, 3), null);
  const [lane] = lanesOf(later, catalogue);
  assert.ok((lane?.bits[0]?.from ?? 0) >= 480);
  assert.equal(lane && stepAt(lane, 500)?.line, 2);
  assert.equal(lane && stepAt(lane, 10), null);
});

test("work is drawn by kit where that says it all, else by its first pattern", () => {
  assert.equal(kindOf(catalogue.get("run")), "run");
  assert.equal(kindOf(catalogue.get("rower")), "machine");
  assert.equal(kindOf(catalogue.get("pull-up")), "pull");
  assert.equal(kindOf(catalogue.get("air-squat")), "legs");
  assert.equal(kindOf(undefined), "other");
  for (const each of catalogue.values()) assert.equal(kindOf(each) === "other", each.patterns.length === 0, each.id);
});

test("an axis has whole minutes that do not touch", () => {
  const hour = axisOf({ from: 0, to: 3600 }, 600);
  assert.deepEqual(hour.ticks, [0, 300, 600, 900, 1200, 1500, 1800, 2100, 2400, 2700, 3000, 3300, 3600]);
  assert.equal(hour.at(1800), 300);
  assert.equal(hour.at(9999), 600);
  assert.equal(hour.second(300), 1800);
  const part = axisOf({ from: 700, to: 1300 }, 500);
  assert.equal(part.ticks[0], 720);
  assert.equal(part.at(700), 0);
  assert.equal(axisOf({ from: 0, to: 0 }, 100).to, 60);
  assert.ok(laneHeight(60) < laneHeight(20));
});

test("a lane is one path per kind, and what lies outside the axis is not drawn", () => {
  const [lane] = lanesOf(thursday, catalogue);
  assert.ok(lane);
  const paths = lanePaths(lane, axisOf({ from: 0, to: 1080 }, 540), 20);
  assert.deepEqual([...paths.keys()].sort(), ["pull", "rest", "run"]);
  for (const path of paths.values()) assert.match(path, /^(M[\d.]+ \d+h[\d.]+v\d+h-[\d.]+z)+$/);
  assert.equal(lanePaths(lane, axisOf({ from: 5000, to: 6000 }, 540), 20).size, 0);
});

test("a queue is drawn as high as its people", () => {
  const axis = axisOf({ from: 0, to: 100 }, 100);
  assert.equal(queuePath([[0, 0], [10, 2], [20, 0]], axis, 30, 2), "M0 30H0V30H10V0H20V30V30z");
  assert.equal(queuePath([], axis, 30, 2), "");
});

const piece = (fields: Partial<RehearsedPiece>): RehearsedPiece => {
  const [first] = thursday.people[0]?.pieces ?? [];
  assert.ok(first);
  return { ...first, rounds: null, capped: 0, reps_per_round: 0, ...fields };
};

test("scores read as on the wall", () => {
  const rounds = { mean: 3, p10: 3, p50: 3, p90: 4 };
  assert.equal(clockText(3725), "1:02:05");
  assert.equal(scoreText(piece({ measure: "reps", rounds, reps_per_round: 31 }), 98.4), "3+5");
  assert.equal(scoreText(piece({ measure: "reps" }), 98.4), "98");
  assert.equal(scoreText(piece({ measure: "kg" }), 0), "no load");
  assert.equal(rangeText(piece({ measure: "seconds", p10: 680, p90: 785 })), "11:20 – 13:05");
  assert.equal(rangeText(piece({ measure: "seconds", p50: 1080, capped: 0.9 })), "cap 18:00");
});

test("a lane and the hour are told in sentences", () => {
  const sentence = personSentence(thursday, thursday.people[0]?.id ?? "");
  assert.match(sentence, /^.+: For time .+, limited by /);
  assert.equal(slackText({ ...thursday.timetable, planned_s: null, p50_s: 600, p90_s: 660 }), "Takes 10:00, at worst 11:00; no end is set.");
  assert.equal(
    slackText({ ...thursday.timetable, planned_s: 600, p50_s: 660, p90_s: 700, over_share: 0.8 }),
    "Runs over by 1:00; over in 80 of 100 runs.",
  );
});

test("findings lead to their line and their people, or to those who do the line's work", () => {
  const lanes = lanesOf(thursday, catalogue);
  const finding = { finding: "queue", severity: "problem" as const, text: "a queue", help: null, line: 2, people: [] };
  assert.deepEqual(jumpOf(finding, lanes), { line: 2, people: thursday.people.map((person) => person.id) });
  assert.deepEqual(jumpOf({ ...finding, people: ["a10", "gone"] }, lanes).people, ["a10"]);
  assert.deepEqual(jumpOf({ ...finding, line: 0 }, lanes), { line: null, people: [] });
});

test("the gravest findings come first, in the program's order", () => {
  const severities = gravestFirst(thursday.findings).map((each) => each.severity);
  assert.deepEqual(severities, [...severities].sort((a, b) => ["problem", "warning", "note"].indexOf(a) - ["problem", "warning", "note"].indexOf(b)));
});

test("findings of one kind and weight are told together, each sentence once, with what may help", () => {
  const one = (finding: string, severity: "note" | "warning" | "problem", words: string) => ({
    finding, severity, text: words, help: finding === "much-more-than-lately" ? null : `what helps a ${finding}`, line: 0, people: [],
  });
  const groups = gathered([
    one("kit-short", "warning", "Box: short."),
    one("much-more-than-lately", "note", "Much."),
    one("queue", "problem", "A queue."),
    one("kit-short", "warning", "Bell: short."),
    one("kit-short", "warning", "Box: short."),
  ]);
  assert.deepEqual(groups.map(({ findings }) => findings.map((each) => each.text)), [["A queue."], ["Box: short.", "Bell: short."], ["Much."]]);
  assert.deepEqual(groups.map(({ help }) => help), ["what helps a queue", "what helps a kit-short", null]);
});

import assert from "node:assert/strict";
import { test } from "node:test";
import type { Cue } from "../src/model/clock.ts";
import { counters, cueWords, kindWord, linesOf, partName } from "../src/views/clock/clock_words.ts";

const cue = (more: Partial<Cue>): Cue => ({
  id: "0.0.0",
  kind: "work",
  name: "AMRAP 11:00",
  piece: 0,
  heat: 0,
  heats: 1,
  round: 0,
  rounds: 1,
  slot: 0,
  slots: 1,
  length_ms: 660_000,
  ends: "by-itself",
  counts: "down",
  called: true,
  into_ms: 0,
  group_starts_ms: [],
  lines: [],
  ...more,
});

test("a part with words behind its name is called by its name, and its words are what to do", () => {
  const warmUp = cue({ kind: "part", name: "Warm-up (coach): easy jog, leg swings" });
  assert.equal(partName(warmUp), "Warm-up (coach)");
  assert.equal(kindWord(warmUp), "Warm-up (coach)");
  assert.deepEqual(linesOf(warmUp), ["easy jog", "leg swings"]);
  assert.deepEqual(linesOf(cue({ kind: "part", name: "Briefing" })), []);
});

test("a length in the name of a piece stays in it", () => {
  assert.equal(partName(cue({})), "AMRAP 11:00");
  assert.deepEqual(linesOf(cue({ lines: ["8 pull-ups"] })), ["8 pull-ups"]);
});

test("a stretch is found by its heat, round and place", () => {
  assert.equal(cueWords(cue({ heats: 2, heat: 1, rounds: 5, round: 2, slots: 3, slot: 1 })), "AMRAP 11:00: work, heat 2, round 3.2");
  assert.equal(cueWords(cue({ kind: "rest", name: "Rest" })), "Rest");
  assert.deepEqual(counters(cue({ heats: 2, rounds: 5, round: 2 })), ["Heat 1 of 2", "Round 3 of 5"]);
});

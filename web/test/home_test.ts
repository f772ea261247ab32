import assert from "node:assert/strict";
import { test } from "node:test";
import type { Cue } from "../src/model/clock.ts";
import { callWords, homeFigures, homeIn, type HeatHome } from "../src/model/home.ts";

const heat: HeatHome = { piece: 0, heat: 1, people: 12, first_s: 601, middle_s: 748, last_s: 1003, last_late_s: 1090, call_s: 900, out_at_call: 2 };
const cue: Cue = {
  id: "2.1.0", kind: "work", name: "A", piece: 0, heat: 1, heats: 2, round: 0, rounds: 1, slot: 0, slots: 1, length_ms: null,
  ends: "on-word", counts: "up", called: true, into_ms: 0, group_starts_ms: [], lines: [],
};

test("the forecast is that of the piece and the heat that run", () => {
  assert.equal(homeIn([heat], cue), heat);
  assert.equal(homeIn([heat], { ...cue, heat: 0 }), null);
  assert.equal(homeIn([heat], { ...cue, kind: "rest" }), null);
  assert.equal(homeIn([heat], null), null);
});

test("first, middle and last are said to ten seconds, the last as a range where it is one", () => {
  assert.deepEqual(homeFigures(heat), [
    ["first home", "10:00"],
    ["half home", "12:30"],
    ["last home", "16:40 to 18:10"],
  ]);
  assert.deepEqual(homeFigures({ ...heat, last_late_s: 1005 }).at(-1), ["last home", "16:40"]);
  assert.deepEqual(homeFigures({ ...heat, people: 2 }), [["home", "16:40"]]);
});

test("a moment for the last call is suggested before it, at it, and not long after it", () => {
  assert.equal(callWords(heat, 60_000), "Last call at about 15:00: by then 2 are usually still out");
  assert.equal(callWords(heat, 905_000), "Now is a good moment for the last call: 2 are usually still out");
  assert.equal(callWords(heat, 970_000), null);
  assert.equal(callWords({ ...heat, call_s: null }, 905_000), null);
  assert.match(callWords({ ...heat, out_at_call: 1 }, 0) ?? "", /one is usually/);
});

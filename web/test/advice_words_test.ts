import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import type { FitPlan } from "../src/model/fits.ts";
import type { Box } from "../src/model/rehearsal.ts";
import type { Drill } from "../src/model/warm_up.ts";
import { changeWords, drillStretches, fitText, otherWays } from "../src/views/advice/advice_words.ts";
import { kitAtHand } from "../src/views/own/away.tsx";

const drill = (name: string, seconds: number, instead: Drill["instead"] = []): Drill => ({
  drill: name, name, phase: "raise", seconds, how: "", say: "", on_floor: false, prepares: [], instead,
});
const box = (name: string, kind: string, start_p50_s: number): Box => ({
  name, kind, piece: null, planned_s: null, start_p50_s, end_p50_s: start_p50_s + 600, end_p90_s: 0,
});

test("drills stand one after the other in the warm-up's box, and nowhere without one", () => {
  const drills = [drill("jog", 90), drill("lunge", 60)];
  assert.deepEqual(drillStretches(drills, [box("Briefing", "briefing", 0), box("Warm-up", "warm-up", 180)]), [
    { name: "jog", from: 180, to: 270 },
    { name: "lunge", from: 270, to: 330 },
  ]);
  assert.deepEqual(drillStretches(drills, [box("Strength", "work", 0)]), []);
});

test("whoever does something else is told once, drill by drill", () => {
  const ann = (other: string) => [{ person: "Ann Invented", action: "no jumps today", drill: other }];
  assert.deepEqual(otherWays([drill("skip", 60, ann("walk")), drill("hop", 30, ann(""))]), [
    { person: "Ann Invented", action: "no jumps today", drills: ["walk for skip", "the drill before again for hop"] },
  ]);
});

test("who does what is text to send, without what anybody avoids or is asked", () => {
  const person = {
    id: "a", expected: 4, expects: "4.0 rounds", inside_before: 0, inside_after: 1, easier: "x", harder: "y",
    clash: "out of reach", question: "ask first",
  };
  const shares = { inside_before: 0, inside_after: 1, short_of: [] };
  const plan: FitPlan = {
    notes: [],
    pieces: [
      {
        ...shares, piece: "PIECE A", intent: "4 rounds or more",
        people: [
          { ...person, name: "Ann Invented", does: ["8 ring rows for 8 pull-ups", "9 burpees for 12 burpees"] },
          { ...person, name: "Bo Invented", does: [] },
        ],
      },
      { ...shares, piece: "Strength", intent: "", people: [] },
    ],
  };
  assert.equal(
    fitText(plan),
    "PIECE A (4 rounds or more)\nAnn Invented: 8 ring rows for 8 pull-ups, 9 burpees for 12 burpees\nBo Invented: as written",
  );
});

test("a change of kit is said act by act, seconds only between two pieces", () => {
  const kit = [
    { name: "Kettlebell 16 kg", stays: 4, fetched: 2, put_away: 0, short_by: 1 },
    { name: "Mat", stays: 0, fetched: 0, put_away: 3, short_by: 0 },
  ];
  assert.deepEqual(changeWords({ from: "Strength", to: "PIECE A", seconds: 47, bars_reloaded: 2, kit }), [
    "stays 4 x Kettlebell 16 kg", "fetch 2 x Kettlebell 16 kg", "put away 3 x Mat", "1 person shares Kettlebell 16 kg",
    "2 bars get another load", "about 0:47",
  ]);
  assert.deepEqual(changeWords({ from: "", to: "PIECE A", seconds: 47, bars_reloaded: 0, kit: [] }), []);
});

test("all kit that may be at hand is in the catalogue", () => {
  const known = JSON.parse(readFileSync("../tests/golden/api/equipment.json", "utf8")) as { readonly body: readonly { readonly id: string }[] };
  const ids = known.body.map(({ id }) => id);
  for (const [id] of kitAtHand) assert.ok(ids.includes(id), id);
});

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { clock, clockText, comingAfter, figureOf, momentAt, sidesOf, soundsBetween, type Clock, type Cue } from "../src/model/clock.ts";

const cue = (id: string, kind: Cue["kind"], seconds: number | null, more: Partial<Cue> = {}): Cue => ({
  id,
  kind,
  name: `Piece ${id}`,
  piece: 0,
  heat: 0,
  heats: 1,
  round: 0,
  rounds: 1,
  slot: 0,
  slots: 1,
  length_ms: seconds === null ? null : seconds * 1000,
  ends: seconds === null ? "on-word" : "by-itself",
  counts: seconds === null ? "up" : "down",
  called: seconds !== null,
  into_ms: 0,
  group_starts_ms: [],
  lines: [],
  ...more,
});

const begin = 1_810_000_000_000;
const cues = [cue("a", "count-in", 10), cue("b", "work", 240), cue("c", "rest", 30), cue("d", "work", null)];

/** As the program answers when the clock was started at `begin`. */
const running = (all: readonly Cue[] = cues): Clock => {
  let at = begin;
  const ahead: { cue: number; at_ms: number }[] = [];
  for (const [index, each] of all.entries()) {
    ahead.push({ cue: index, at_ms: at });
    if (each.ends === "on-word") break;
    at += each.length_ms ?? 0;
  }
  return {
    class: "sat-24",
    version: 1,
    state: "running",
    at: { cue: 0, elapsed_ms: 0, length_ms: all[0]?.length_ms ?? null, ends_ms: all[0]?.length_ms ?? null },
    ahead,
    over_ms: all.at(-1)?.ends === "by-itself" ? at : null,
    last_call_ms: null,
    last_act: null,
    cues: all,
    now_ms: begin,
  };
};
const figureAt = (from: Clock, ms: number) => figureOf(momentAt(from, begin + ms));

test("shows the cue that began last, counting down to zero at its end", () => {
  assert.equal(figureAt(running(), 1).seconds, 10);
  assert.equal(figureAt(running(), 9999).seconds, 1);
  assert.equal(momentAt(running(), begin + 10_000).cue?.id, "b");
  assert.equal(figureAt(running(), 10_000).seconds, 240);
});

test("counts up in a piece that nobody ends but the coach, for as long as it takes", () => {
  const late = momentAt(running(), begin + 280_000 + 5_000_000);
  assert.equal(late.cue?.id, "d");
  assert.equal(figureOf(late).seconds, 5000);
  assert.equal(late.left, null);
});

test("shows no second twice and leaves none out in an hour", () => {
  const hour = running([cue("a", "work", 3600)]);
  const shown: number[] = [];
  for (let ms = 0; ms < 3_600_000; ms += 16.7) {
    const { seconds } = figureAt(hour, ms);
    if (shown.at(-1) !== seconds) shown.push(seconds);
  }
  assert.deepEqual(shown, Array.from({ length: 3600 }, (_, i) => 3600 - i));
});

test("says how far a part of the class is over what was planned for it", () => {
  const talk = running([cue("a", "part", 60, { ends: "on-word", called: false })]);
  assert.deepEqual(figureAt({ ...talk, at: { cue: 0, elapsed_ms: 0, length_ms: 60_000, ends_ms: null } }, 75_500), {
    seconds: 15,
    over: true,
  });
});

test("is over when the last cue is, and stands still while it is paused", () => {
  const short = running([cue("a", "work", 20)]);
  assert.equal(momentAt(short, begin + 20_000).state, "over");
  const held: Clock = { ...running(), state: "paused", ahead: [], at: { cue: 1, elapsed_ms: 30_000, length_ms: 240_000, ends_ms: 240_000 } };
  assert.equal(figureAt(held, 999_999).seconds, 210);
});

test("counts a stretch that was given more time to its new end", () => {
  const from = running();
  const given: Clock = {
    ...from,
    at: { cue: 1, elapsed_ms: 0, length_ms: 300_000, ends_ms: 300_000 },
    ahead: [{ cue: 1, at_ms: begin }, { cue: 2, at_ms: begin + 300_000 }],
  };
  assert.equal(figureAt(given, 0).seconds, 300);
  assert.equal(momentAt(given, begin + 299_000).cue?.id, "b");
  assert.equal(figureAt(given, 300_000).seconds, 30);
});

test("names what comes next, past the count-in, and when", () => {
  const two = running([cue("a", "rest", 20), cue("b", "count-in", 10), cue("c", "work", 60)]);
  const coming = comingAfter(two, momentAt(two, begin + 5000), begin + 5000);
  assert.equal(coming?.cue.id, "c");
  assert.equal(coming?.in, 25_000);
  assert.equal(comingAfter(two, momentAt(two, begin + 35_000), begin + 35_000), null);
});

test("gives each heat and each group a clock of its own", () => {
  const heat = (id: string, number: number, kind: Cue["kind"], seconds: number) => cue(id, kind, seconds, { heat: number, heats: 2 });
  const heats = running([heat("a", 0, "work", 60), heat("b", 1, "change", 65), heat("c", 1, "count-in", 10), heat("d", 1, "work", 60)]);
  assert.deepEqual(sidesOf(heats, momentAt(heats, begin + 20_000), begin + 20_000), [
    { name: "Heat 1", state: "works", time: 20_000 },
    { name: "Heat 2", state: "waits", time: 115_000 },
  ]);
  assert.equal(sidesOf(heats, momentAt(heats, begin + 140_000), begin + 140_000)[0]?.state, "done");
  const groups = running([cue("a", "work", 60, { counts: "up", group_starts_ms: [0, 15_000, 30_000] })]);
  assert.deepEqual(sidesOf(groups, momentAt(groups, begin + 20_000), begin + 20_000), [
    { name: "Group 1", state: "works", time: 20_000 },
    { name: "Group 2", state: "works", time: 5000 },
    { name: "Group 3", state: "waits", time: 10_000 },
  ]);
});

test("sounds three, two, one and then what begins, the last minute, and each start of a group", () => {
  const heard = soundsBetween(running(), begin, begin + 281_000).map(({ at, sound }) => `${sound} ${String((at - begin) / 1000)}`);
  assert.deepEqual(heard, [
    "count 7", "count 8", "count 9", "go 10",
    "last-minute 190", "count 247", "count 248", "count 249", "rest 250",
    "count 277", "count 278", "count 279", "go 280",
  ]);
  const groups = running([cue("a", "work", 60, { group_starts_ms: [0, 15_000] })]);
  assert.equal(soundsBetween(groups, begin + 14_999, begin + 15_001)[0]?.sound, "go");
  assert.deepEqual(soundsBetween({ ...running(), state: "paused" }, begin, begin + 99_000), []);
});

test("reads minutes and seconds as the wall has them", () => {
  assert.deepEqual([0, 65, 4500, -3].map(clockText), ["0:00", "1:05", "75:00", "0:00"]);
});

test("reads the program's own answer", () => {
  const golden = JSON.parse(readFileSync("../tests/golden/api/clock.json", "utf8")) as { body: unknown };
  const ready = clock(golden.body, "");
  assert.equal(momentAt(ready, ready.now_ms).state, "ready");
  assert.ok(ready.cues.length > 5);
});

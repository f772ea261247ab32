import assert from "node:assert/strict";
import { test } from "node:test";
import type { Coming, Cue, Moment } from "../src/model/clock.ts";
import { partsOf } from "../src/model/clock.ts";
import { gatherings, teamWords, wallLineUp, type PieceLineUp } from "../src/model/line_up.ts";
import { hasBegun } from "../src/model/own_today.ts";
import { cueWords, lineUpLines } from "../src/views/clock/clock_words.ts";

type Standing = PieceLineUp["people"][number];
const person = (name: string, more: Partial<Standing> = {}): Standing =>
  ({ id: name, name, heat: 0, place: 0, starts_s: 0, with: [], ...more });
const piece = (people: readonly Standing[], more: Partial<PieceLineUp> = {}): PieceLineUp =>
  ({ piece: 1, title: "Piece A", heats: 1, lanes: false, people, ...more });
const said = (of: PieceLineUp) =>
  gatherings(of).map(({ name, teams }) => [name, teams.map((team) => teamWords(of, team, (each) => each.name))]);

test("heats go in order, each with its people by their places", () => {
  const heats = piece([person("Bo", { heat: 1 }), person("Cy", { place: 1 }), person("Ana")], { heats: 2 });
  assert.deepEqual(said(heats), [["Heat 1", ["Ana", "Cy"]], ["Heat 2", ["Bo"]]]);
});

test("groups of a waterfall start say how long after the signal they go", () => {
  const groups = piece([person("Ana"), person("Bo", { place: 1, starts_s: 20 }), person("Cy", { place: 2, starts_s: 40 })]);
  assert.deepEqual(said(groups).map(([name]) => name), ["Group 1", "Group 2, 0:20 after the signal", "Group 3, 0:40 after the signal"]);
});

test("a pair and a three stand together once, with their lane", () => {
  const pairs = piece(
    [
      person("Ana", { with: ["Bo"] }),
      person("Bo", { with: ["Ana"] }),
      person("Cy", { place: 1, with: ["Di", "Ed"] }),
      person("Di", { place: 1, with: ["Cy", "Ed"] }),
      person("Ed", { place: 1, with: ["Cy", "Di"] }),
    ],
    { lanes: true },
  );
  assert.deepEqual(said(pairs), [["", ["Lane 1: Ana + Bo", "Lane 2: Cy + Di + Ed"]]]);
});

test("on the wall names are short, and longer where two are alike", () => {
  const pairs = piece([
    person("Ana Kettle", { with: ["Bo Rack"] }),
    person("Bo Rack", { with: ["Ana Kettle"] }),
    person("Ana Mat", { with: ["Cy Rope"] }),
    person("Cy Rope", { with: ["Ana Mat"] }),
  ]);
  assert.deepEqual(wallLineUp(pairs), ["Piece A: Ana K. + Bo", "Piece A: Ana M. + Cy"]);
  const alone = piece(["A", "B", "C", "D", "E", "F", "G"].map((name, place) => person(name, { place, starts_s: place * 20 })));
  assert.deepEqual(wallLineUp(alone), ["Groups 1 to 5: A, B, C, D, E", "Groups 6 to 7: F, G"]);
  const heat = piece(["A", "B", "C", "D", "E", "F"].map((name) => person(name)), { heats: 2 });
  assert.deepEqual(wallLineUp(heat), ["Heat 1: A, B, C, D, E", "Heat 1: F"]);
});

const cue = (id: string, kind: Cue["kind"], more: Partial<Cue> = {}): Cue =>
  ({ id, kind, name: "Piece A", piece: kind === "part" ? null : 1, heat: 0, heats: 2, round: 0, rounds: 1, slots: 1, slot: 0, length_ms: 1000, lines: [], ...more }) as unknown as Cue;
const moment = (of: Cue, state: Moment["state"] = "running"): Moment => ({ state, cue: of }) as unknown as Moment;

test("the wall says who stands where before a piece and between its heats, and not while it runs", () => {
  const pieces = [piece([person("Ana"), person("Bo", { heat: 1 })], { heats: 2 })];
  const work = (heat: number): Coming => ({ cue: cue("1.0.1", "work", { heat }), in: null });
  assert.deepEqual(lineUpLines(pieces, moment(cue("0.0.0", "part")), work(0)), ["Heat 1: Ana", "Heat 2: Bo"]);
  assert.deepEqual(lineUpLines(pieces, moment(cue("1.1.0", "change", { heat: 1 })), work(1)), ["Heat 2: Bo"]);
  assert.deepEqual(lineUpLines(pieces, moment(cue("1.0.1", "work")), work(1)), []);
  assert.deepEqual(lineUpLines(pieces, moment(cue("2.0.0", "part")), { cue: cue("3.0.0", "part"), in: null }), []);
});

test("the stretches of one part of the class are together, and each has a name of its own", () => {
  const slots = (round: number) => [
    cue(`1.0.${round}a`, "work", { round, rounds: 2, slots: 2 }),
    cue(`1.0.${round}b`, "rest", { round, rounds: 2, slots: 2 }),
    cue(`1.0.${round}c`, "work", { round, rounds: 2, slots: 2, slot: 1 }),
    cue(`1.0.${round}d`, "rest", { round, rounds: 2, slots: 2, slot: 1 }),
    cue(`1.0.${round}e`, "rest", { round, rounds: 2, slots: 2, slot: 1 }),
  ];
  const cues = [cue("0.0.0", "part"), ...slots(0), ...slots(1), cue("10.0.0", "part", { name: "Cool-down" })];
  assert.deepEqual(partsOf(cues).map((part) => part.length), [1, 10, 1]);
  const names = cues.map((each, index) => cueWords(each, cues[index - 1]));
  assert.equal(new Set(names).size, names.length, names.join("; "));
});

test("a class has begun at its time by the device's clock", () => {
  const at = { date: "2027-05-15", start: "9:00" };
  assert.equal(hasBegun(at, new Date(2027, 4, 15, 8, 59)), false);
  assert.equal(hasBegun(at, new Date(2027, 4, 15, 9, 0)), true);
  assert.equal(hasBegun({ date: null, start: "09:00" }, new Date(2020, 1, 1)), true);
});

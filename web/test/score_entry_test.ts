import assert from "node:assert/strict";
import { test } from "node:test";
import type { Clock, Cue, Moment } from "../src/model/clock.ts";
import { pieceOfClock } from "../src/model/finish.ts";
import { repsOffered, repsToCap, roundsOffered, rowsFor } from "../src/model/picks.ts";
import {
  beforeIt, draftOf, forecastText, loadSteps, lotFrom, openTaps, prefilled, question, rangeText, scoreText, type ScoreForecast, type ScoreLine, type ShownScore,
} from "../src/model/scores.ts";
import { instantWords, markWords, movementWords } from "../src/ui/words.ts";

const reps = (p10: number, p50: number, p90: number, round = 0): ScoreForecast => ({ measure: "reps", p10, p50, p90, reps_per_round: round });
const kilos = (value: number): ScoreForecast => ({ measure: "kg", p10: value, p50: value, p90: value, reps_per_round: 0 });

/** How many taps bring a value of so many numbers to `wanted`, the quickest way; null where taps alone do not. */
function taps(offered: Parameters<typeof rowsFor>[0], from: number, wanted: number): number | null {
  let reached = new Set([from]);
  for (let count = 0; count <= 3; ++count) {
    if (reached.has(wanted)) return count;
    reached = new Set([...reached].flatMap((value) => rowsFor(offered, value).flatMap((row) => row.numbers.map(row.after))));
  }
  return null;
}

test("a name, any rounds and reps, and Keep are five taps at the most", () => {
  for (const round of [8, 20, 31, 36, 51, 60]) {
    const forecast = reps(2.5 * round, 3.9 * round, 5.6 * round, round);
    const person = { forecast, least: 0.8 * round, most: 8.4 * round };
    const start = prefilled({ form: "rounds", parts: 1 }, forecast);
    const rounds = roundsOffered(person);
    const rest = repsOffered(round);
    assert.ok(rounds && rest);
    assert.deepEqual([rounds.from, rounds.to], [0, 12], "all that is believed is offered, and a good day");
    for (let full = rounds.from; full <= rounds.to; ++full)
      for (let left = 0; left < round; ++left) {
        const count = [taps(rounds, start.rounds, full), taps(rest, start.reps, left)];
        assert.ok(count.every((each) => each !== null), `${full}+${left} of ${round} can be tapped`);
        assert.ok(2 + (count[0] ?? 9) + (count[1] ?? 9) <= 5, `${full}+${left} of ${round}: ${count.join("+")} taps`);
      }
  }
});

test("where rounds are not alike or reps are unknown, no numbers are offered", () => {
  assert.equal(roundsOffered({ forecast: reps(60, 80, 100), least: 0, most: 200 }), null);
  assert.equal(repsOffered(0), null);
});

test("tens and the rest never leave what is offered", () => {
  const rows = rowsFor({ from: 0, to: 34 }, 28);
  assert.deepEqual(rows.map((row) => row.chosen), [20, 8]);
  assert.equal(rows[0]?.after(30), 34);
  assert.equal(rows[1]?.after(3), 23);
  const many = rowsFor(repsToCap, 246);
  assert.deepEqual(many.map((row) => row.chosen), [200, 40, 6]);
  assert.deepEqual([many[0]?.after(300), many[1]?.after(0), many[2]?.after(9)], [346, 206, 249]);
  for (const wanted of [0, 7, 99, 100, 599]) assert.ok((taps(repsToCap, 0, wanted) ?? 9) <= 3, `${wanted}`);
});

test("loads keep their half kilograms", () => {
  assert.equal(forecastText("load", kilos(17.5), 17.5), "17.5 kg");
  assert.equal(rangeText("load", kilos(22.5)), "about 22.5 kg");
  assert.equal(scoreText(prefilled({ form: "load", parts: 1 }, kilos(17.5))), "17.5 kg");
});

test("a load goes to the next one that the hall has, and begins with one of them", () => {
  const bells = { loads: [8, 12, 16, 24], load_step: null };
  assert.equal(scoreText(prefilled({ form: "load", parts: 1 }, kilos(13.4), bells)), "12 kg");
  assert.equal(scoreText(prefilled({ form: "load", parts: 1 }, kilos(14), bells)), "12 kg", "of two the lighter");
  assert.equal(lotFrom(bells, 12, 1), 16);
  assert.equal(lotFrom(bells, 13, -1), 12, "also from a load that is none of them");
  assert.equal(lotFrom(bells, 24, 1), null);
  assert.equal(lotFrom(bells, 8, 3), 24);
});

test("a bar goes by twice the smallest plate of the hall, and by 2.5 kg where it is not known", () => {
  assert.deepEqual(loadSteps({ loads: [], load_step: 2 }), [2, 8]);
  assert.deepEqual(loadSteps({ loads: [], load_step: null }), [2.5, 10]);
  assert.equal(scoreText(prefilled({ form: "load", parts: 1 }, kilos(61.3), { loads: [], load_step: 2.5 })), "62.5 kg");
});

test("what is kept is not moved to a load of the hall", () => {
  const bells = { loads: [8, 12, 16], load_step: null };
  assert.equal(scoreText(draftOf({ form: "load", parts: 1 }, kilos(12), "14.5 kg", bells)), "14.5 kg");
});

test("work that nobody forecasts has no forecast in words, and nothing at all is asked about", () => {
  const nobody = { forecast: kilos(0), least: 0, most: 0, holds: null };
  const draft = prefilled({ form: "load", parts: 1 }, nobody.forecast);
  assert.equal(rangeText("load", nobody.forecast), "unknown");
  assert.equal(question(draft, nobody), "Really 0 kg?");
  assert.equal(question({ ...draft, parts: [20] }, nobody), null);
});

test("more reps than the piece holds are asked about, also where the forecast is wide", () => {
  const person = { forecast: reps(66, 140, 140), least: 0, most: 213, holds: 140 };
  const draft = prefilled({ form: "reps", parts: 1 }, person.forecast);
  assert.equal(question({ ...draft, parts: [150] }, person), "The piece holds 140, really 150?");
  assert.equal(question({ ...draft, parts: [140] }, person), null);
});

test("what is corrected starts from what is kept", () => {
  const forecast = reps(90, 120, 150, 31);
  const of = (form: "rounds" | "reps" | "time" | "load", kept: string) => scoreText(draftOf({ form, parts: 1 }, forecast, kept));
  assert.equal(of("rounds", "4+12"), "4+12");
  assert.equal(of("reps", "51"), "51");
  assert.equal(of("load", "17.5 kg"), "17.5 kg");
  assert.equal(of("time", "12:31"), "12:31");
  assert.equal(of("time", "cap, 3+40"), "cap, 3+40");
  assert.equal(of("reps", "as many as I could"), "120");
});

const shown = (person: string, score: string, more: Partial<ShownScore> = {}): ShownScore =>
  ({ person, piece: "Pairs", score, kept: null, key: `key-${person}`, held: 10_000, ...more });

test("one tap for a pair is one thing to take back, with both scores", () => {
  const people = [{ id: "a", with: ["b"] }, { id: "b", with: ["a"] }, { id: "c", with: [] }];
  const taps_ = openTaps([shown("a", "15:20"), shown("c", "15:20"), shown("b", "15:20")], people, 5000);
  assert.deepEqual(taps_.map((tap) => tap.people), [["a", "b"], ["c"]]);
  assert.deepEqual(taps_[0]?.keys, ["key-a", "key-b"]);
  assert.deepEqual(openTaps([shown("a", "15:20"), shown("b", "15:20", { key: null })], people, 10_000), [], "too late, or kept");
});

test("what a line said before comes newest first, without what it says now", () => {
  const line = (version: number, score: string) => ({ number: 1, version, score }) as unknown as ScoreLine;
  const all = [line(1, "51"), line(2, "45"), line(3, "40")];
  assert.deepEqual(beforeIt(all, line(3, "40")).map((each) => each.score), ["45", "51"]);
});

test("an instant is said by the device's clock, without the day where that is today", () => {
  const at = new Date(2027, 4, 15, 9, 3);
  assert.equal(instantWords(at.toISOString(), new Date(2027, 4, 15, 20, 0)), "today at 09:03");
  assert.equal(instantWords(at.toISOString(), new Date(2027, 4, 16, 1, 0)), "Sat 15 May at 09:03");
  assert.equal(instantWords("soon", new Date()), "soon");
});

test("the piece of the clock is the one that runs, or ran last", () => {
  const clock = { cues: ["Warm-up", "Skill", "Change", "Pairs", "Scores"].map((name) => ({ name }) as Cue) } as unknown as Clock;
  const at = (index: number) => pieceOfClock(clock, { index } as Moment, [{ title: "Skill" }, { title: "Pairs" }]);
  assert.deepEqual([-1, 0, 1, 2, 3, 4].map(at), [0, 0, 0, 0, 1, 1]);
});

test("marks and versions by their ids are words, a best lift with its unit", () => {
  assert.deepEqual(markWords("5rm bb-deadlift", "60"), ["5RM barbell deadlift", "60 kg"]);
  assert.deepEqual(markWords("1rm back-squat (lb)", "225"), ["1RM back squat", "225 lb"]);
  assert.deepEqual(markWords("max band-pull-up", "5"), ["max band pull-up", "5"]);
  assert.equal(movementWords("run / kb-swing / db-floor-press"), "run, kettlebell swing, dumbbell floor press");
});

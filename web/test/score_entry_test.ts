import assert from "node:assert/strict";
import { test } from "node:test";
import type { Clock, Cue, Moment } from "../src/model/clock.ts";
import { pieceOfClock } from "../src/model/finish.ts";
import { numbersOf, partsOf, repsOffered, repsToCap, roundsOffered, rowsFor } from "../src/model/picks.ts";
import {
  beforeIt, clock, draftOf, forecastText, isPastCap, openTaps, prefilled, question, rangeText, scoreText,
  type Draft, type Form, type FormPerson, type FormPiece, type ScoreForecast, type ScoreLine, type ShownScore,
} from "../src/model/scores.ts";
import { instantWords, markWords, movementWords } from "../src/ui/words.ts";

type Shape = Pick<FormPiece, "form" | "cap_s" | "parts">;
type Expected = Pick<FormPerson, "forecast" | "least" | "most" | "holds" | "capped" | "reps_at_cap" | "loads" | "load_step">;

const reps = (p10: number, p50: number, p90: number, round = 0): ScoreForecast => ({ measure: "reps", p10, p50, p90, reps_per_round: round });
const kilos = (value: number): ScoreForecast => ({ measure: "kg", p10: value, p50: value, p90: value, reps_per_round: 0 });

const nobody = { holds: null, capped: 0, reps_at_cap: null, loads: [], load_step: null };

/** Every score that this many taps lead to, from what the forecast filled in; 1 is for the box of the cap. */
function within(taps: number, piece: Shape, person: Expected): ReadonlySet<string> {
  const known = new Map<string, Draft>();
  let fresh: readonly Draft[] = [prefilled(piece.form, person)];
  for (let left = taps; ; --left) {
    for (const draft of fresh) known.set(scoreText(draft), draft);
    if (left === 0) return new Set(known.keys());
    const next = fresh.flatMap((draft) => [
      ...numbersOf(piece, person, draft).flatMap((each) => each.rows.flatMap((row) => row.numbers.map((number) => each.with(row.after(number))))),
      ...(piece.form === "time" && piece.cap_s !== null ? [{ ...draft, capped: !draft.capped }] : []),
    ]);
    fresh = [...new Map(next.map((draft) => [scoreText(draft), draft])).values()].filter((draft) => !known.has(scoreText(draft)));
  }
}

/** A name and Keep are two taps, so three are left for any score that is believed. */
function fiveTaps(piece: Shape, person: Expected, wanted: readonly string[]): void {
  assert.ok(wanted.length > 10);
  const reached = within(3, piece, person);
  assert.deepEqual(wanted.filter((each) => !reached.has(each)), []);
}

const every = (from: number, to: number, step = 1): readonly number[] =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, at) => from + at * step);
const single = { cap_s: null, parts: 1 };

test("a name, any rounds and reps, and Keep are five taps at the most", () => {
  for (const round of [8, 20, 31, 36, 51, 60]) {
    const forecast = reps(2.5 * round, 3.9 * round, 5.6 * round, round);
    const person = { ...nobody, forecast, least: 0.8 * round, most: 8.4 * round };
    const rounds = roundsOffered(person);
    assert.deepEqual(rounds, { from: 0, to: 12 }, "all that is believed is offered, and a good day");
    fiveTaps({ ...single, form: "rounds" }, person, every(0, 12).flatMap((full) => every(0, round - 1).map((left) => `${full}+${left}`)));
  }
});

test("so are a time, and a score that the cap stopped, whatever the forecast fills in", () => {
  for (const capped of [0, 0.3, 0.9]) {
    const forecast = { ...reps(800, 950, 1080, 51), measure: "seconds" as const };
    const person = { ...nobody, forecast, least: 520, most: 1360, capped, reps_at_cap: capped > 0 ? 190 : null };
    const wanted = [
      ...every(520, 1080).map(clock),
      ...every(0, 11).flatMap((full) => every(0, 50).map((left) => `cap, ${full}+${left}`)),
    ];
    fiveTaps({ form: "time", cap_s: 1080, parts: 1 }, person, wanted);
    const unlike = { ...person, forecast: { ...forecast, reps_per_round: 0 } };
    fiveTaps({ form: "time", cap_s: 1080, parts: 1 }, unlike, every(0, 599).map((done) => `cap, 0+${done}`));
  }
  const long = { ...nobody, forecast: { ...reps(2200, 2600, 3100), measure: "seconds" as const }, least: 1300, most: 3100 };
  fiveTaps({ form: "time", cap_s: null, parts: 1 }, long, every(1300, 3100).map(clock));
});

test("so are reps, loads, metres and kilocalories, also where intervals are added up", () => {
  const of = (measure: ScoreForecast["measure"], p10: number, p50: number, p90: number) => {
    const width = Math.max(p90 - p10, p50 / 4);
    return { ...nobody, forecast: { ...reps(p10, p50, p90), measure }, least: Math.max(0, p10 - width), most: p90 + width };
  };
  for (const middle of [18, 60, 140, 260, 480]) {
    const person = of("reps", 0.8 * middle, middle, 1.2 * middle);
    fiveTaps({ ...single, form: "reps" }, person, every(Math.ceil(person.least), Math.floor(person.most)).map(String));
    fiveTaps({ ...single, form: "reps", parts: 7 }, person, every(Math.ceil(person.least), Math.floor(person.most)).map(String));
    fiveTaps({ ...single, form: "kcal" }, of("kcal", 0.8 * middle, middle, 1.2 * middle), every(Math.ceil(person.least), Math.floor(person.most)).map((kcal) => `${kcal} kcal`));
  }
  const held = { ...of("reps", 66, 140, 140), holds: 140 };
  fiveTaps({ ...single, form: "reps" }, held, every(0, 140).map(String));
  for (const middle of [400, 1250, 5200]) {
    const rowed = of("m", 0.9 * middle, middle, 1.1 * middle);
    fiveTaps({ ...single, form: "distance" }, rowed, every(Math.ceil(rowed.least), Math.floor(rowed.most)).map((metres) => `${metres} m`));
  }
  for (const person of [of("kg", 17.5, 17.5, 17.5), of("kg", 70, 85, 100), of("kg", 180, 190, 200), { ...of("kg", 0, 0, 0), most: 0 }]) {
    const most = person.most || 200;
    const loads = [...every(Math.ceil(person.least), most), ...every(Math.ceil(person.least / 2.5) * 2.5, most, 2.5)];
    fiveTaps({ ...single, form: "load" }, person, loads.map((kilograms) => `${kilograms} kg`));
  }
});

test("a typed number is read, and nothing else", () => {
  const person = { ...nobody, forecast: reps(90, 120, 150), least: 60, most: 180 };
  const typed = (form: Form, words: string) => numbersOf({ ...single, form }, person, prefilled(form, person))[0]?.read(words);
  assert.deepEqual(["137", " 9 ", "13.5", "many", ""].map((words) => typed("reps", words)), [137, 9, null, null, null]);
  assert.deepEqual(["61.25", "61,25", "heavy"].map((words) => typed("load", words)), [61.25, 61.25, null]);
  assert.deepEqual(["12:31", "12:75"].map((words) => typed("time", words)), [751, null]);
});

test("intervals share what is known of their sum, and are what was written down", () => {
  const draft = prefilled("reps", { ...nobody, forecast: reps(90, 122, 150) });
  assert.deepEqual(partsOf({ parts: 5 }, draft), [25, 25, 24, 24, 24]);
  assert.deepEqual(partsOf({ parts: 2 }, { ...draft, parts: [3, 4] }), [3, 4]);
});

test("whom the cap stops in most runs is filled in with what they have then", () => {
  const forecast = { ...reps(1080, 1080, 1080, 51), measure: "seconds" as const };
  assert.equal(scoreText(prefilled("time", { ...nobody, forecast, capped: 0.8, reps_at_cap: 190 })), "cap, 3+37");
  assert.equal(scoreText(prefilled("time", { ...nobody, forecast, capped: 0.3, reps_at_cap: 190 })), "18:00");
  assert.deepEqual([1_079_999, 1_080_999, 1_081_000].map((passed) => isPastCap({ cap_s: 1080 }, passed)), [false, false, true]);
  assert.equal(isPastCap({ cap_s: null }, 9e9), false);
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
});

test("loads keep their half kilograms", () => {
  assert.equal(forecastText("load", kilos(17.5), 17.5), "17.5 kg");
  assert.equal(rangeText("load", kilos(22.5)), "about 22.5 kg");
  assert.equal(scoreText(prefilled("load", { ...nobody, forecast: kilos(17.5) })), "17.5 kg");
});

test("work that nobody forecasts has no forecast in words, and nothing at all is asked about", () => {
  const unknown = { ...nobody, forecast: kilos(0), least: 0, most: 0 };
  const draft = prefilled("load", unknown);
  assert.equal(rangeText("load", unknown.forecast), "unknown");
  assert.equal(question(draft, unknown), "Really 0 kg?");
  assert.equal(question({ ...draft, parts: [20] }, unknown), null);
});

test("more reps than the piece holds are asked about, also where the forecast is wide", () => {
  const person = { ...nobody, forecast: reps(66, 140, 140), least: 0, most: 213, holds: 140 };
  const draft = prefilled("reps", person);
  assert.equal(question({ ...draft, parts: [150] }, person), "The piece holds 140, really 150?");
  assert.equal(question({ ...draft, parts: [140] }, person), null);
});

test("what is corrected starts from what is kept", () => {
  const forecast = reps(90, 120, 150, 31);
  const of = (form: "rounds" | "reps" | "time" | "load", kept: string) => scoreText(draftOf(form, { ...nobody, forecast }, kept));
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

test("a load is one that the hall has, and begins with the nearest of them", () => {
  const bells = { ...nobody, forecast: kilos(13.4), least: 6, most: 22, loads: [8, 12, 16, 24] };
  assert.equal(scoreText(prefilled("load", bells)), "12 kg");
  assert.equal(scoreText(prefilled("load", { ...bells, forecast: kilos(14) })), "12 kg", "of two the lighter");
  assert.equal(scoreText(draftOf("load", bells, "14.5 kg")), "14.5 kg", "what is kept stays");
  const [number] = numbersOf({ form: "load", cap_s: null, parts: 1 }, bells, prefilled("load", bells));
  assert.deepEqual(number?.rows[0]?.numbers, [8, 12, 16, 24]);
  assert.deepEqual(number?.with(number.rows[0]?.after(24) ?? 0).parts, [24]);
});

test("a bar goes by twice the smallest plate of the hall", () => {
  const bar = { ...nobody, forecast: kilos(61.3), least: 40, most: 90, load_step: 2.5 };
  assert.equal(scoreText(prefilled("load", bar)), "62.5 kg");
  const [number] = numbersOf({ form: "load", cap_s: null, parts: 1 }, bar, prefilled("load", bar));
  assert.deepEqual(number?.rows.at(-1)?.numbers, [0, 2.5, 5, 7.5]);
});

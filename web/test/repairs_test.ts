import assert from "node:assert/strict";
import { test } from "node:test";
import { signal } from "@preact/signals";
import type { Answer } from "../src/api/client.ts";
import type { WhatIf } from "../src/api/questions.ts";
import type { Waits } from "../src/editor/latest.ts";
import type { Movement } from "../src/model/gym.ts";
import type { Reading } from "../src/model/reading.ts";
import type { Finding, Rehearsal } from "../src/model/rehearsal.ts";
import type { Consequences, RepairPlan } from "../src/model/repairs.ts";
import { BoardModel } from "../src/views/board/board_model.ts";
import { isSameQuestion, isStale } from "../src/views/advice/advice_search.ts";
import { aimText, cutFirstWords, figuresOf, homeText, isTooShort, lineOf, tooShortWords } from "../src/views/repairs/repair_words.ts";

const nothing: Consequences = {
  wait_s: 125, finished_share: 0.75, over_share: 0, end_p50_s: 3600, end_p90_s: 3660, over_s: 0, median_finish_s: 0, work_s: 800, off_intent_share: null,
};
const text = "3 RFT\n9 pull-ups";
const mended = "3 RFT\n9 pull-ups\n2nd station: ring rows";
const plan: RepairPlan = {
  notes: [],
  tried: 4,
  runs: 200,
  stopped: false,
  targets: [],
  before: nothing,
  repairs: [
    { kind: "second-station", words: "ring rows beside the bars", lines: [3], rewritten: false, text: mended, change: 1.5, gain_min: 1, after: { ...nothing, wait_s: 22 } },
  ],
};

const queue: Finding = { finding: "queue", severity: "problem", text: "a queue", help: null, line: 2, people: [] };
const understood: Reading = {
  title: "", blocks: [], fixed_seconds: null, reading: [], understood: [{ line: 2, column: 1, length: 10, as: "step" }], diagnostics: [],
};
const rehearsed = (findings: readonly Finding[]): Rehearsal => ({
  board: { title: "", fixed_seconds: null }, runs: 200, seed: 1, notes: [], pieces: [], people: [], runners: [], places: [],
  timetable: { planned_s: null, p50_s: 0, p90_s: 0, over_share: 0, boxes: [] }, findings,
});

/** A board model whose program answers at once and whose waits end when the test says so. */
function opened(findings: readonly Finding[] = [queue]) {
  const waiting = new Map<number, () => void>();
  let count = 0;
  const waits: Waits = {
    start: (_, then) => {
      waiting.set(++count, then);
      return count;
    },
    stop: (wait) => {
      waiting.delete(wait);
    },
  };
  const asked: WhatIf[] = [];
  const fitted: WhatIf[] = [];
  const noDrills = { asked_s: 600, planned_s: 0, prepared_share: 0, floor_visits: 0, proven: true, unprepared: [], drills: [] };
  const ok = <T,>(value: T): Promise<Answer<T>> => Promise.resolve({ ok: true, value });
  const program = {
    read: () => ok(understood),
    rehearse: () => ok(rehearsed(findings)),
    repairs: (what: WhatIf) => {
      asked.push(what);
      return ok(plan);
    },
    fits: (what: WhatIf) => {
      fitted.push(what);
      return ok({ pieces: [], notes: [] });
    },
    hourPlan: () => ok({ cuts: [], changes: [] }),
    warmUp: () => ok({ notes: [], needs: [], together: noDrills, late: noDrills, away: noDrills }),
    tidy: () => ok({ text }),
    board: () => ok({ id: "thursday", text, version: "1" }),
    keepBoard: () => ok({ version: "2" }),
    boardLast: () => ok({ last: null }),
  };
  const kept = new Map<string, string>();
  const shelf = {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => {
      kept.set(key, value);
    },
    removeItem: (key: string) => {
      kept.delete(key);
    },
  };
  const model = new BoardModel({ program, shelf, movements: signal<readonly Movement[]>([]), waits });
  const pass = async () => {
    for (let turn = 0; turn < 6; ++turn) {
      for (const [wait, then] of [...waiting]) {
        waiting.delete(wait);
        then();
      }
      await new Promise((done) => setImmediate(done));
    }
  };
  return { model, asked, fitted, pass };
}

test("a board that is opened is searched once its rehearsal has found something to mend", async () => {
  const { model, asked, pass } = opened();
  await model.open("thursday", "sat");
  await pass();
  assert.deepEqual(asked.map((what) => [what.text, what.class]), [[text, "sat"]]);
  assert.deepEqual(model.repairs.found.value?.plan, plan);
  model.stop();
});

test("a class with nothing but notes is not searched unless somebody asks", async () => {
  const { model, asked, pass } = opened([{ ...queue, severity: "note" }]);
  await model.open("thursday", null);
  await pass();
  assert.deepEqual(asked, []);
  model.stop();
});

test("writing marks the proposals and searches for none; a switch does", async () => {
  const { model, asked, pass } = opened();
  await model.open("thursday", null);
  await pass();
  model.write(`${text}\n5 burpees`);
  await pass();
  assert.equal(asked.length, 1);
  const found = model.repairs.found.value;
  assert.ok(found && model.adviceQuestion.value && !isSameQuestion(found.asked, model.adviceQuestion.value));
  model.lookAt({ heads: 19 });
  await pass();
  assert.equal(asked.length, 2);
  assert.equal(asked[1]?.heads, 19);
  model.stop();
});

test("a proposal that was taken can be put back until something else is written", async () => {
  const { model, pass } = opened();
  await model.open("thursday", null);
  await pass();
  const repair = plan.repairs[0];
  assert.ok(repair);
  model.write(model.take(repair));
  assert.equal(model.untaken.value, text);
  model.write(`${mended}\n5 burpees`);
  assert.equal(model.untaken.value, null);
  model.write(mended);
  model.write(model.untaken.value ?? "");
  model.putBack();
  assert.equal(model.text.value, text);
  assert.equal(model.repairs.taken.value, null);
  await pass();
  const found = model.repairs.found.value;
  assert.ok(found && model.adviceQuestion.value && isSameQuestion(found.asked, model.adviceQuestion.value));
  model.stop();
});

test("a search that is left shows nothing of its answer", async () => {
  const { model, pass } = opened([]);
  await model.open("thursday", null);
  await pass();
  model.repairs.look({ text });
  model.repairs.leave();
  await pass();
  assert.equal(model.repairs.found.value, null);
  assert.equal(model.repairs.looking.value, false);
  model.stop();
});

test("fits are worked out only when asked for, and are stale once the board is another", async () => {
  const { model, fitted, pass } = opened();
  await model.open("thursday", "sat");
  await pass();
  assert.deepEqual(fitted, []);
  const now = model.adviceQuestion.value;
  assert.ok(now);
  model.fits.look(now);
  await pass();
  assert.equal(fitted.length, 1);
  assert.equal(isStale(model.fits.found.value, model.adviceQuestion.value), false);
  model.write(`${text}\n5 burpees`);
  await pass();
  assert.equal(isStale(model.fits.found.value, model.adviceQuestion.value), true);
  await model.open("thursday", "sat");
  assert.equal(model.fits.found.value, null);
  model.stop();
});

test("figures stand beside those of doing nothing, work as a share of it, the intent where there is one", () => {
  const after = { ...nothing, wait_s: 22, finished_share: 0.9, work_s: 840 };
  assert.deepEqual(
    figuresOf(nothing, after).map(({ now, then }) => [now, then]),
    [["2:05", "0:22"], ["75 %", "90 %"], ["1:00:00", "1:00:00"], ["1:01:00", "1:01:00"], ["100 %", "105 %"]],
  );
  const level = { name: "quickest third", people: 8, from: 980, to: 1180.4, first_round_s: null };
  assert.equal(aimText({ measure: "seconds", in_rounds: false }, level), "16:20 to 19:40");
  assert.equal(aimText({ measure: "reps", in_rounds: true }, { ...level, from: 4.84, to: 6.2 }), "4.8 to 6.2 rounds");
  assert.equal(aimText({ measure: "m", in_rounds: false }, level), "980 to 1180 m");
  const cap = { seconds: 2100, home_share: 0.86, now_s: 1200, home_now_share: 0.14, text: null };
  assert.equal(homeText(cap), "86 % are home by then, 14 % by 20:00");
  assert.equal(homeText({ ...cap, now_s: null }), "86 % are home by then");
  const meant = (off: number): Consequences => ({ ...nothing, off_intent_share: off });
  assert.deepEqual(figuresOf(meant(0.4), meant(0.1))[5], { name: "as it is meant for", now: "60 %", then: "90 %" });
  assert.equal(lineOf(mended, 3), "2nd station: ring rows");
  assert.equal(lineOf(mended, 9), "");
});

test("a class that ends late in most runs is too short, unless a proposal brings most runs home in time", () => {
  const late = { ...nothing, over_share: 0.83 };
  const told = (...after: readonly number[]): RepairPlan => ({
    ...plan,
    before: late,
    repairs: plan.repairs.flatMap((repair) => after.map((over_share) => ({ ...repair, after: { ...late, over_share } }))),
  });
  assert.deepEqual([told(), told(0.7, 0.6), told(0.7, 0.4), { ...plan, repairs: [] }].map(isTooShort), [true, true, false, false]);
  assert.match(tooShortWords(told()), /^The hour is too short for this board: 83 % of the runs end late/);
});

test("what to cut first is said with what it gives, and that nothing can be cut, too", () => {
  const cut = { cut: "the skill part (line 3)", gives_s: 600, end_p90_s: 3590, work_left: 0.9 };
  assert.equal(
    cutFirstWords([cut, { ...cut, cut: "another" }]),
    "Cut first: the skill part (line 3). It gives 10:00; then nine classes in ten are over after 59:50.",
  );
  assert.match(cutFirstWords([]), /^Nothing on it can be cut/);
});

import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { test } from "node:test";
import { account, accounts, me } from "../src/model/account.ts";
import { arrivals, listEffect } from "../src/model/arrivals.ts";
import { awayPlan } from "../src/model/away.ts";
import { brief, pastScores } from "../src/model/brief.ts";
import { equipmentList, limitKinds } from "../src/model/catalogue.ts";
import { clock, programTime } from "../src/model/clock.ts";
import { anything, type Decoder } from "../src/model/decode.ts";
import { fitPlan } from "../src/model/fits.ts";
import { hourPlan } from "../src/model/hour_plan.ts";
import { emergencyCard } from "../src/model/emergency.ts";
import { faultAnswer } from "../src/model/fault.ts";
import { boardLast, boardRows, classRows, gym, keptBoard, keptClass, keptHouse, movements, saved, tidied } from "../src/model/gym.ts";
import { efforts } from "../src/model/effort.ts";
import { keptHall } from "../src/model/hall.ts";
import { home } from "../src/model/home.ts";
import { lineUp } from "../src/model/line_up.ts";
import { consent, ownToday } from "../src/model/own_today.ts";
import { floorPeople, peoplePreview, peopleTable, personRow } from "../src/model/people.ts";
import { reading } from "../src/model/reading.ts";
import { rehearsal } from "../src/model/rehearsal.ts";
import { repairPlan } from "../src/model/repairs.ts";
import { warmUpPlan } from "../src/model/warm_up.ts";
import { notes } from "../src/model/notes.ts";
import { results } from "../src/model/results.ts";
import { runners, runs } from "../src/model/runners.ts";
import { classScores, scoreForm } from "../src/model/scores.ts";
import { trailPage } from "../src/model/trail.ts";

/** The program's own answers, written by its tests: what the page reads of them is checked against nothing else. */
const folder = "../tests/golden/api";

interface Golden {
  readonly status: number;
  readonly body: unknown;
}

const decoders: Readonly<Record<string, Decoder<unknown>>> = {
  "account-person": account,
  "account-screen": account,
  "account-signed-out": anything,
  accounts,
  "arrival-ticked": anything,
  arrivals,
  "board-last": boardLast,
  "board-never": boardLast,
  "board-saved": saved,
  board: keptBoard,
  brief,
  boards: boardRows,
  class: keptClass,
  "class-effort": efforts,
  "class-removed": anything,
  "class-scores": classScores,
  consent,
  "consent-said": consent,
  classes: classRows,
  clock,
  "clock-started": clock,
  "effort-said": anything,
  away: awayPlan,
  emergency: emergencyCard,
  "emergency-saved": saved,
  equipment: equipmentList,
  fit: fitPlan,
  gym,
  hall: keptHall,
  home,
  "line-up": lineUp,
  house: keptHouse,
  limits: limitKinds,
  "list-effect": listEffect,
  "me-coach": me,
  "me-screen": me,
  "me-nobody": me,
  "me-person": me,
  "me-relief": me,
  movements,
  "note-added": anything,
  "note-removed": anything,
  notes,
  "own-away": awayPlan,
  "own-today": ownToday,
  pairs: anything,
  timetable: hourPlan,
  warmup: warmUpPlan,
  owner: me,
  "people-preview-bad": peoplePreview,
  "people-preview": peoplePreview,
  "people-relief": floorPeople,
  people: peopleTable,
  "person-scores": pastScores,
  person: personRow,
  read: reading,
  rehearse: rehearsal,
  repairs: repairPlan,
  results,
  "runner-out": anything,
  runners,
  runs,
  "score-added": anything,
  "score-corrected": anything,
  "score-form": scoreForm,
  "score-versions": classScores,
  "sign-out": anything,
  tidy: tidied,
  time: programTime,
  trail: trailPage,
  "trail-before": trailPage,
  "walk-in": anything,
};

const read = (name: string) => JSON.parse(readFileSync(`${folder}/${name}.json`, "utf8")) as Golden;

const names = readdirSync(folder)
  .filter((file) => file.endsWith(".json"))
  .map((file) => file.slice(0, -".json".length));

test("there are answers to read", () => {
  assert.ok(names.length > 20);
});

/** Fields that the page leaves out on purpose; any other one that it does not read is news from the program. */
const leftOut = new Set(["category"]);
/** The same of one answer, as paths. */
const leftOutOf: Readonly<Record<string, readonly string[]>> = {
  fit: [".pieces[].window"], // said in words beside it
  timetable: [".class_s", ".boxes", ".pieces"], // of the rehearsal, which knows when each is likely to begin
};

/** Every field of an answer that the decoded value lacks, as paths. */
function lost(answer: unknown, decoded: unknown, at = ""): readonly string[] {
  if (Array.isArray(answer))
    return answer.flatMap((each, i) => lost(each, Array.isArray(decoded) ? decoded[i] : undefined, `${at}[]`));
  if (typeof answer !== "object" || answer === null) return [];
  return Object.entries(answer).flatMap(([key, each]) => {
    if (leftOut.has(key)) return [];
    const here = `${at}.${key}`;
    const got = typeof decoded === "object" && decoded !== null && Object.hasOwn(decoded, key);
    return got ? lost(each, (decoded as Record<string, unknown>)[key], here) : [here];
  });
}

for (const name of names) {
  test(`the page reads the answer ${name}`, () => {
    const { status, body } = read(name);
    if (status >= 400) {
      assert.notEqual(faultAnswer(body, "").error.text, "");
      return;
    }
    const decode = decoders[name];
    assert.ok(decode, `no decoder is said for ${name}.json`);
    const missing = lost(body, decode(body, "")).filter((path) => !leftOutOf[name]?.includes(path));
    assert.deepEqual([...new Set(missing)], []);
  });
}

test("an answer of another shape is refused, with where", () => {
  assert.throws(() => gym({ ...(read("gym").body as object), invented: "yes" }, ""), /invented is "yes", expected true or false/);
});

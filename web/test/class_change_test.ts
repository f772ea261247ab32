import assert from "node:assert/strict";
import { test } from "node:test";
import {
  classId, dayAfter, emptyClass, mergedPlan, nextLike, readPlan, usuallyOn, withBooked, withPlan, writtenPlan,
} from "../src/model/class_change.ts";
import type { ClassRow, GymClass } from "../src/model/gym.ts";

const saturday: GymClass = {
  ...emptyClass,
  id: "2027-05-15-0900",
  date: "2027-05-15",
  start: "09:00",
  board_id: "sat",
  booked: ["a1", "a2"],
  weather: { ...emptyClass.weather, temp_c: -2.5 },
  boxes_min: { briefing: 3 },
};
const row = (id: string): ClassRow => ({ id, date: null, start: null, minutes: null, board: "", booked: 0 });

test("a plan that is written and read again is the plan", () => {
  const { plan, faults } = readPlan(writtenPlan(saturday));
  assert.deepEqual(faults, {});
  assert.deepEqual(withPlan(saturday, plan), saturday);
});

test("day and start are needed; numbers that cannot be are named, empty ones are none", () => {
  const written = writtenPlan(saturday);
  const { faults } = readPlan({ ...written, date: "", start: "9", minutes: "1441", temp_c: "warm", boxes: { scores: "-1" } });
  assert.deepEqual(Object.keys(faults).sort(), ["date", "minutes", "scores", "start", "temp_c"]);
  const { plan } = readPlan({ ...written, minutes: " ", temp_c: "18,5", boxes: { briefing: "" } });
  assert.equal(plan.minutes, null);
  assert.equal(plan.weather.temp_c, 18.5);
  assert.deepEqual(plan.boxes_min, {});
});

test("who is booked no more is not counted on, who is booked later is, and walk-ins stay", () => {
  const arrived = { ...saturday, arrivals: [{ id: "a1", late_s: 60 }, { id: "w1", late_s: 0 }], walk_ins: ["w1"] };
  assert.deepEqual(withBooked(arrived, ["a2", "a3"]).arrivals, [{ id: "w1", late_s: 0 }, { id: "a3", late_s: 0 }]);
  assert.deepEqual(withBooked(arrived, ["a1", "a2", "w1"]), { ...arrived, booked: ["a1", "a2", "w1"], walk_ins: [] });
  assert.deepEqual(withBooked(saturday, ["a3"]), { ...saturday, booked: ["a3"] });
});

test("what others changed meanwhile stays, and what both changed is named", () => {
  const mine = { ...saturday, minutes: 75 };
  const theirs = { ...saturday, booked: ["a1", "a2", "a3"] };
  const merged = mergedPlan(saturday, mine, theirs);
  assert.ok("plan" in merged);
  assert.deepEqual([merged.plan.minutes, merged.plan.booked], [75, theirs.booked]);
  assert.deepEqual(mergedPlan(saturday, mine, { ...saturday, minutes: 50 }), { both: ["the minutes"] });
  assert.ok("plan" in mergedPlan(saturday, mine, { ...saturday, minutes: 75 }), "the same change is no quarrel");
});

test("a class is called by its day and hour, with a number where that is taken", () => {
  assert.equal(classId([], "2027-05-15", "09:00"), "2027-05-15-0900");
  assert.equal(classId([row("2027-05-15-0900"), row("2027-05-15-0900-2")], "2027-05-15", "09:00"), "2027-05-15-0900-3");
});

test("a class like another is a week later, with its people and without its weather and faults", () => {
  const like = nextLike({ ...saturday, faults: [{ equipment: "bar", out: 1, text: "" }], arrivals: [{ id: "a1", late_s: 5 }] });
  assert.equal(like.date, "2027-05-22");
  assert.deepEqual(like.booked, saturday.booked);
  assert.deepEqual([like.faults, like.arrivals, like.weather], [[], [], emptyClass.weather]);
  assert.equal(dayAfter("2027-12-28", 7), "2028-01-04");
});

test("who usually comes is told by the weekday of the date", () => {
  const rows = [{ id: "a1", attends: "sat tue" }, { id: "a2", attends: "wed" }, { id: "a3" }];
  assert.deepEqual(usuallyOn(rows, "2027-05-15"), ["a1"]);
  assert.deepEqual(usuallyOn(rows, ""), []);
});

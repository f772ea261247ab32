import { flag, listOf, number, objectOf, text, wordOf, type Decoded } from "./decode.ts";

const drill = objectOf({
  drill: text,
  name: text,
  phase: text,
  seconds: number,
  how: text,
  say: text,
  on_floor: flag,
  prepares: listOf(number),
  instead: listOf(objectOf({ person: text, action: text, drill: text })),
});
/** One drill of a warm-up; `prepares` counts into the needs of the plan. */
export type Drill = Decoded<typeof drill>;

const drills = objectOf({
  asked_s: number,
  planned_s: number,
  prepared_share: number,
  floor_visits: number,
  proven: flag,
  unprepared: listOf(number),
  drills: listOf(drill),
});

/** The warm-up for a board, for who comes late, and without kit. */
export const warmUpPlan = objectOf({
  notes: listOf(text),
  needs: listOf(objectOf({ kind: wordOf("joint", "pattern", "muscle"), id: text, name: text, weight: number, because: text })),
  together: drills,
  late: drills,
  away: drills,
});
export type WarmUpPlan = Decoded<typeof warmUpPlan>;

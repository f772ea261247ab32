import { listOf, number, objectOf, orElse, orNull, pairOf, text, wordOf, type Decoded } from "./decode.ts";

export const spread = objectOf({ mean: number, p10: number, p50: number, p90: number });
export type Spread = Decoded<typeof spread>;

const step = objectOf({
  round: number,
  step: number,
  line: number,
  version: text,
  load_kg: orNull(number),
  amount: number,
  share: number,
  start_s: number,
  end_s: number,
  work_s: number,
  rest_s: number,
  wait_s: number,
  sets: number,
});
export type RehearsedStep = Decoded<typeof step>;

export const measure = wordOf("seconds", "reps", "kg", "m", "kcal");
export type Measure = Decoded<typeof measure>;

const piece = objectOf({
  piece: number,
  measure,
  mean: number,
  sd: number,
  sd_day: number,
  p10: number,
  p50: number,
  p90: number,
  rounds: orNull(spread),
  reps_per_round: orElse(number, 0),
  capped: number,
  reps_at_cap: orNull(spread),
  interval_s: listOf(number),
  demand_share: number,
  limiter: wordOf("push", "pull", "legs", "core", "grip", "pace", "engine", "queue", "clock"),
  wait_s: number,
  steps: listOf(step),
});
export type RehearsedPiece = Decoded<typeof piece>;

const person = objectOf({ id: text, name: text, pieces: listOf(piece) });
export type RehearsedPerson = Decoded<typeof person>;

const placeUse = objectOf({
  place: text,
  name: text,
  count: number,
  wait_mean_s: number,
  wait_p90_s: number,
  queue_max_mean: number,
  queue: listOf(pairOf(number, number)),
});
export type PlaceUse = Decoded<typeof placeUse>;

const box = objectOf({
  name: text,
  kind: text,
  piece: orNull(number),
  planned_s: orNull(number),
  start_p50_s: number,
  end_p50_s: number,
  end_p90_s: number,
});
export type Box = Decoded<typeof box>;

const finding = objectOf({
  finding: text,
  severity: wordOf("note", "warning", "problem"),
  text,
  help: orNull(text),
  line: number,
  people: listOf(text),
});
export type Finding = Decoded<typeof finding>;

/** A class played through many times. Step times count from the start of the piece, all others from the class's. */
export const rehearsal = objectOf({
  board: objectOf({ title: text, fixed_seconds: orNull(number) }),
  runs: number,
  seed: number,
  notes: listOf(text),
  pieces: listOf(text),
  people: listOf(person),
  runners: listOf(objectOf({ piece: number, round: number, step: number, id: text, back_s: spread })),
  places: listOf(placeUse),
  timetable: objectOf({
    planned_s: orNull(number),
    p50_s: number,
    p90_s: number,
    over_share: number,
    boxes: listOf(box),
  }),
  findings: listOf(finding),
});
export type Rehearsal = Decoded<typeof rehearsal>;
export type ClassTime = Rehearsal["timetable"];

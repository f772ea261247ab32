import { listOf, number, objectOf, orNull, pairOf, text, wordOf, type Decoded } from "./decode.ts";
import { measure } from "./rehearsal.ts";

const comer = objectOf({
  id: text,
  name: text,
  actions: listOf(text),
  late_s: number,
  standing: wordOf("unknown", "first", "back", "regular"),
  sessions: number,
  last_came: orNull(text),
  marks: number,
});
/** Somebody who comes, as the coach meets them: known or new, and what they do instead. */
export type Comer = Decoded<typeof comer>;

const setOut = objectOf({
  equipment: text,
  name: text,
  kg: orNull(number),
  height_cm: orNull(number),
  needed: number,
  available: number,
});
export type SetOut = Decoded<typeof setOut>;

/** What a coach wants to know of a class beside its rehearsal. */
export const brief = objectOf({ people: listOf(comer), set_out: listOf(setOut) });
export type Brief = Decoded<typeof brief>;

const forecast = objectOf({ measure, p10: number, p50: number, p90: number, reps_per_round: number });
export type Forecast = Decoded<typeof forecast>;

const pastScore = objectOf({
  date: text,
  board: text,
  title: text,
  piece: text,
  score: text,
  version: text,
  effort: orNull(number),
  flag: text,
  value: orNull(number),
  days: orNull(pairOf(number, number)),
  forecast: orNull(forecast),
});
/**
 * One score, beside what a rehearsal with today's marks forecasts. In its measure: `value`, the score, and `days`, what
 * the same body gives around it on four days in five.
 */
export type PastScore = Decoded<typeof pastScore>;
export const pastScores = listOf(pastScore);

import { listOf, number, objectOf, text, type Decoded } from "./decode.ts";

/** The session at another place, as chalk; seconds are of the whole and of each pattern, there and in the gym. */
export const awayPlan = objectOf({
  text,
  here_s: number,
  away_s: number,
  lines: listOf(objectOf({ written: text, away: text })),
  patterns: listOf(objectOf({ pattern: text, here_s: number, away_s: number })),
  notes: listOf(text),
});
export type AwayPlan = Decoded<typeof awayPlan>;

/** Where somebody is: `kit` by id, `room` in square metres, `minutes` at most. */
export interface AwayPlace {
  readonly kit: readonly string[];
  readonly room?: number;
  readonly minutes?: number;
  readonly quiet: boolean;
  readonly outside: boolean;
}

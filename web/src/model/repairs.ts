import { listOf, number, objectOf, text, wordOf, type Decoded } from "./decode.ts";

const consequences = objectOf({
  wait_s: number,
  finished_share: number,
  over_share: number,
  end_p50_s: number,
  end_p90_s: number,
  over_s: number,
  median_finish_s: number,
  work_s: number,
});
/** What a board does to the class as a whole. */
export type Consequences = Decoded<typeof consequences>;

const repair = objectOf({
  kind: wordOf(
    "odd-start",
    "swap",
    "start-in-turn",
    "second-station",
    "fewer-reps",
    "shorter-run",
    "fewer-rounds",
    "heats",
  ),
  words: text,
  line: number,
  text,
  change: number,
  gain_min: number,
  after: consequences,
});
/** One small change of the board; `text` is the whole board with it. */
export type Repair = Decoded<typeof repair>;

/** The changes that help most, at most three, beside doing nothing (`before`). */
export const repairPlan = objectOf({ notes: listOf(text), tried: number, runs: number, before: consequences, repairs: listOf(repair) });
export type RepairPlan = Decoded<typeof repairPlan>;

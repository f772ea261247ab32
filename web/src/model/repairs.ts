import { flag, listOf, number, objectOf, orNull, text, wordOf, type Decoded } from "./decode.ts";
import { measure } from "./rehearsal.ts";

const consequences = objectOf({
  wait_s: number,
  finished_share: number,
  over_share: number,
  end_p50_s: number,
  end_p90_s: number,
  over_s: number,
  median_finish_s: number,
  work_s: number,
  off_intent_share: orNull(number),
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
    "more-rounds",
    "less-of-each",
    "longer-interval",
    "cap",
    "cut-list",
    "heats",
  ),
  words: text,
  lines: listOf(number),
  rewritten: flag,
  text,
  change: number,
  gain_min: number,
  after: consequences,
});
/** One small change of the board; `text` is the whole board with it. */
export type Repair = Decoded<typeof repair>;
/** What is told and done of a change that is taken; `text` is the whole board with it. */
export type Change = Pick<Repair, "words" | "lines" | "text">;

const capTarget = objectOf({
  seconds: number,
  home_share: number,
  now_s: orNull(number),
  home_now_share: number,
  text: orNull(text),
});
/** A cap by which most are home; `text` is the board with it, null where it has it. */
export type CapTarget = Decoded<typeof capTarget>;

const target = objectOf({
  piece: number,
  name: text,
  measure,
  in_rounds: flag,
  cap: orNull(capTarget),
  levels: listOf(objectOf({ name: text, people: number, from: number, to: number, first_round_s: orNull(number) })),
});
/** What to write beside a piece: by when to stop, and what who may aim at. */
export type Target = Decoded<typeof target>;

/** The changes that help most, at most three, beside doing nothing (`before`). */
export const repairPlan = objectOf({ notes: listOf(text), tried: number, runs: number, stopped: flag, before: consequences, repairs: listOf(repair), targets: listOf(target) });
export type RepairPlan = Decoded<typeof repairPlan>;

import { flag, listOf, number, objectOf, orElse, orNull, tableOf, text, wordOf, type Decoded } from "./decode.ts";
import { role } from "./account.ts";

export const gym = objectOf({ name: text, invented: flag, today: text, role, next_class: orNull(text), unread: orNull(text) });
export type Gym = Decoded<typeof gym>;

export const saved = objectOf({ version: text });

export const boardRows = listOf(objectOf({ id: text, title: text, saved_at: orNull(text) }));
export type BoardRow = Decoded<typeof boardRows>[number];

export const keptBoard = objectOf({ id: text, text, version: text });
export type KeptBoard = Decoded<typeof keptBoard>;

export const tidied = objectOf({ text });

export const movements = listOf(
  objectOf({ id: text, name: text, aliases: listOf(text), category: text, patterns: listOf(text) }),
);
export type Movement = Decoded<typeof movements>[number];

/** How one piece went on a day: the scores as they were entered. */
const pieceLastTime = objectOf({
  piece: text,
  people: number,
  capped: number,
  best: text,
  middle: text,
  last: text,
  effort: orNull(number),
});
/** The last day on which a board was done; null if it never was. */
export const boardLast = objectOf({ last: orNull(objectOf({ date: text, pieces: listOf(pieceLastTime) })) });
export type LastTime = NonNullable<Decoded<typeof boardLast>["last"]>;

export const classRows = listOf(
  objectOf({
    id: text,
    date: orNull(text),
    start: orNull(text),
    minutes: orNull(number),
    board: text,
    booked: number,
  }),
);
export type ClassRow = Decoded<typeof classRows>[number];

const placeFault = objectOf({ equipment: text, out: number, text: orElse(text, "") });
export type PlaceFault = Decoded<typeof placeFault>;

export const gymClass = objectOf({
  id: text,
  date: orNull(text),
  start: orNull(text),
  minutes: orNull(number),
  board_id: text,
  booked: listOf(text),
  arrivals: listOf(objectOf({ id: text, late_s: number })),
  walk_ins: listOf(text),
  faults: listOf(placeFault),
  weather: objectOf({
    text,
    temp_c: orNull(number),
    wbgt_c: orNull(number),
    rain: flag,
    daylight: flag,
    closed_routes: listOf(text),
  }),
  boxes_min: tableOf(number),
  indoors: flag,
});
export type GymClass = Decoded<typeof gymClass>;
export const keptClass = objectOf({ version: text, class: gymClass });
export type KeptClass = Decoded<typeof keptClass>;

export const house = objectOf({
  mass_unit: wordOf("kg", "lb"),
  tiers: wordOf("by-sex", "by-choice"),
  tempo: wordOf("down-pause-up-top", "up-top-down-pause"),
  legs_counted_together: flag,
  pull_up_may_swing: flag,
  burpee_has_push_up: flag,
  minute_one_is_odd: flag,
  last_rest_counts: flag,
  keep_place_while_resting: flag,
  words: tableOf(text),
});
export type House = Decoded<typeof house>;
export const keptHouse = objectOf({ version: text, house });
export type KeptHouse = Decoded<typeof keptHouse>;

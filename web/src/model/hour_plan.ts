import { listOf, number, objectOf, text, type Decoded } from "./decode.ts";

const cut = objectOf({ cut: text, gives_s: number, end_p90_s: number, work_left: number });
/** Something to leave out. */
export type Cut = Decoded<typeof cut>;
const move = objectOf({ name: text, stays: number, fetched: number, put_away: number, short_by: number });
/** Loose kit of one kind before a piece. */
export type KitMove = Decoded<typeof move>;
const change = objectOf({ from: text, to: text, seconds: number, bars_reloaded: number, kit: listOf(move) });
/** What happens to the kit before one piece; `from` is empty before the first. */
export type ChangeOver = Decoded<typeof change>;

/** What to cut first when the hour gets short, each on top of those before it, and the kit between the pieces. */
export const hourPlan = objectOf({ cuts: listOf(cut), changes: listOf(change) });
export type HourPlan = Decoded<typeof hourPlan>;

import type { FormPerson } from "./scores.ts";

/** Whole numbers to choose from with one tap. */
export interface Offered {
  readonly from: number;
  readonly to: number;
}

/** More than these are chosen in two taps, the tens and the rest, or in three with the hundreds. */
const atOnce = 24;

/** So many rounds beyond what is believed: a good day is asked about, not hidden. */
const beyond = 3;
const roundsToCap = 11;

/** The full rounds that a person may have done, all that are believed among them; null where nobody can say. */
export function roundsOffered({ forecast, least, most }: Pick<FormPerson, "forecast" | "least" | "most">): Offered | null {
  const round = forecast.reps_per_round;
  if (round < 1) return null;
  // Of a piece for time only the cap leaves rounds, and the forecast is of the time.
  if (forecast.measure !== "reps") return { from: 0, to: roundsToCap };
  const to = Math.ceil(most / round) + beyond;
  return { from: to < atOnce ? 0 : Math.max(0, Math.floor(least / round)), to };
}

/** The reps of somebody whom the cap stopped in a piece whose rounds are not alike. */
export const repsToCap: Offered = { from: 0, to: 599 };

/** What may be left over of a round that is not full; null where rounds are not alike. */
export function repsOffered(repsPerRound: number): Offered | null {
  return repsPerRound >= 2 ? { from: 0, to: Math.ceil(repsPerRound) - 1 } : null;
}

/** One row of numbers to tap, and what the value is after a tap on one of them. */
export interface Row {
  readonly numbers: readonly number[];
  readonly chosen: number;
  readonly after: (tapped: number) => number;
}

const range = (from: number, to: number, step = 1): readonly number[] =>
  Array.from({ length: Math.max(0, Math.floor((to - from) / step) + 1) }, (_, at) => from + at * step);

/** The numbers to tap for a value: all at once, or of many the hundreds, the tens and the rest. */
export function rowsFor({ from, to }: Offered, value: number): readonly Row[] {
  if (to - from < atOnce) return [{ numbers: range(from, to), chosen: value, after: (tapped) => tapped }];
  const within = (wanted: number) => Math.min(to, Math.max(from, wanted));
  return [100, 10, 1].flatMap((step): readonly Row[] => {
    if (step > to) return [];
    const isFirst = step * 10 > to;
    const numbers = isFirst ? range(Math.floor(from / step) * step, to, step) : range(0, 9 * step, step);
    const chosen = Math.floor((isFirst ? value : value % (step * 10)) / step) * step;
    return [{ numbers, chosen, after: (tapped) => within(value - chosen + tapped) }];
  });
}

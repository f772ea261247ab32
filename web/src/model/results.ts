import { listOf, number, objectOf, orNull, text, wordOf, type Decoded } from "./decode.ts";
import { measure } from "./rehearsal.ts";

const own = wordOf("first", "beyond", "within-luck", "below", "unknown");

const line = objectOf({ id: text, name: text, score: text, done_as: text, said_as: text, own, before: orNull(number), luck: number });
/** One score beside the person's own best before it; `luck` is by how much two days of theirs may differ. */
export type ResultLine = Decoded<typeof line>;

const ranking = objectOf({ done_as: text, said_as: text, rows: listOf(objectOf({ place: number, name: text, score: text })) });
export type Ranking = Decoded<typeof ranking>;

const piece = objectOf({ piece: text, measure, reps_per_round: number, people: listOf(line), rankings: listOf(ranking) });
export type PieceResults = Decoded<typeof piece>;

export const results = objectOf({ pieces: listOf(piece) });

/** Lines gathered by the version that was done, the largest group first. */
export function byVersion(lines: readonly ResultLine[]): readonly (readonly [string, readonly ResultLine[]])[] {
  const groups = new Map<string, ResultLine[]>();
  for (const each of lines) groups.set(each.done_as, [...(groups.get(each.done_as) ?? []), each]);
  return [...groups].sort(([, a], [, b]) => b.length - a.length);
}

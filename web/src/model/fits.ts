import { listOf, number, objectOf, text, type Decoded } from "./decode.ts";

const personFit = objectOf({
  id: text,
  name: text,
  does: listOf(text),
  expected: number,
  expects: text,
  inside_before: number,
  inside_after: number,
  easier: text,
  harder: text,
  clash: text,
  question: text,
});
/** One person's version of a piece; `does` is empty for as written, shares are of the runs inside what is intended. */
export type PersonFit = Decoded<typeof personFit>;

const pieceFit = objectOf({
  piece: text,
  intent: text,
  inside_before: number,
  inside_after: number,
  short_of: listOf(text),
  people: listOf(personFit),
});
/** A piece's fit; `intent` is empty, and nobody is in it, where nothing is intended with the piece. */
export type PieceFit = Decoded<typeof pieceFit>;

/** What each person does so that every piece is what it is meant to be. */
export const fitPlan = objectOf({ pieces: listOf(pieceFit), notes: listOf(text) });
export type FitPlan = Decoded<typeof fitPlan>;

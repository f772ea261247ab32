import { flag, listOf, number, objectOf, orNull, text, type Decoded } from "./decode.ts";
import { formPersonFields, formPieceFields } from "./scores.ts";

const ownPiece = objectOf({
  ...formPieceFields,
  ...formPersonFields,
  heat: orNull(number),
  heats: number,
  place: orNull(number),
  lanes: flag,
  starts_s: number,
  lines: listOf(text),
  starts_with: text,
  partners: listOf(text),
});
/** One piece as its reader does it. */
export type OwnPiece = Decoded<typeof ownPiece>;

const today = objectOf({
  class: text,
  date: orNull(text),
  start: orNull(text),
  board: text,
  text,
  told: listOf(text),
  pieces: listOf(ownPiece),
});
/** The next class that the reader is in. */
export type OwnToday = Decoded<typeof today>;
export const ownToday = objectOf({ today: orNull(today) });

export const consent = objectOf({ in_rankings: flag });

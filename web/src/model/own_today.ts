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

/** Whether the class has begun by the device's clock; one without a day or a time is taken as begun. */
export function hasBegun({ date, start }: Pick<OwnToday, "date" | "start">, now: Date): boolean {
  if (date === null || start === null) return true;
  return now >= new Date(`${date}T${start.padStart(5, "0")}:00`);
}

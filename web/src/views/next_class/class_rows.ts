import type { ClassRow } from "../../model/gym.ts";
import { shortDay } from "../../ui/words.ts";

/** A class by its day and hour, short. */
export const whenOf = (row: ClassRow): string =>
  [row.date ? shortDay(row.date) : row.id, row.start].filter(Boolean).join(", ");

/** Classes by day and hour, the first one first. */
export const inOrder = (rows: readonly ClassRow[]): ClassRow[] =>
  [...rows].sort((a, b) => `${a.date ?? ""} ${a.start ?? ""}`.localeCompare(`${b.date ?? ""} ${b.start ?? ""}`));

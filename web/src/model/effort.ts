import { listOf, number, objectOf, text, type Decoded } from "./decode.ts";
import type { Outbox } from "./outbox.ts";

const effort = objectOf({ person: text, effort: number });
/** How hard the whole hour was for somebody, 0 to 10. */
export type Effort = Decoded<typeof effort>;
export const efforts = listOf(effort);

export const effortPath = (classId: string) => `/api/classes/${encodeURIComponent(classId)}/effort`;
export const notePath = "/api/notes";

/** What somebody said of the hour: what is still on its way before what is kept; null if nothing. */
export function effortOf(kept: readonly Effort[], outbox: Outbox, classId: string, person: string): number | null {
  let said = kept.find((each) => each.person === person)?.effort ?? null;
  for (const letter of outbox) {
    const sent = letter.body as { readonly person?: string; readonly effort?: number };
    if (letter.path === effortPath(classId) && letter.refused === null && sent.person === person) said = sent.effort ?? said;
  }
  return said;
}

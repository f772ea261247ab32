import type { Fault } from "../model/fault.ts";
import type { PersonRow } from "../model/people.ts";
import { people } from "./gym.ts";
import { program } from "./program.ts";

/** Keeps these people in place of those of `version`; null if it was done, else why not. */
export async function keepPeople(rows: readonly PersonRow[], version: string): Promise<Fault | null> {
  const answer = await program.keepPeople(rows, version);
  if (answer.ok) await people.lookAgain();
  return answer.ok ? null : answer.fault;
}

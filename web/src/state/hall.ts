import type { Fault } from "../model/fault.ts";
import type { Hall } from "../model/hall.ts";
import { hall } from "./gym.ts";
import { program } from "./program.ts";

/** Keeps this hall in place of that of `version`; null if it was done, else why not. */
export async function keepHall(changed: Hall, version: string): Promise<Fault | null> {
  const answer = await program.keepHall(changed, version);
  if (answer.ok) await hall.lookAgain();
  return answer.ok ? null : answer.fault;
}

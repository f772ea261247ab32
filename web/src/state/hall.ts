import type { Fault } from "../model/fault.ts";
import type { KeptClass, PlaceFault } from "../model/gym.ts";
import type { Hall } from "../model/hall.ts";
import { classOf, hall } from "./gym.ts";
import { program } from "./program.ts";

/** Keeps this hall in place of that of `version`; null if it was done, else why not. */
export async function keepHall(changed: Hall, version: string): Promise<Fault | null> {
  const answer = await program.keepHall(changed, version);
  if (answer.ok) await hall.lookAgain();
  return answer.ok ? null : answer.fault;
}

/** Keeps what is out of order for a class; null if it was done, else why not. */
export async function keepFaults(kept: KeptClass, faults: readonly PlaceFault[]): Promise<Fault | null> {
  const answer = await program.keepClass({ ...kept.class, faults }, kept.version);
  if (answer.ok) await classOf(kept.class.id).lookAgain();
  return answer.ok ? null : answer.fault;
}

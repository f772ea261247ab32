import { mergedPlan, withPlan, type ClassPlan } from "../model/class_change.ts";
import type { Fault } from "../model/fault.ts";
import type { GymClass, KeptClass, PlaceFault } from "../model/gym.ts";
import { classes, classOf, gym } from "./gym.ts";
import { program } from "./program.ts";

async function keep(changed: GymClass, version: string | null): Promise<Fault | null> {
  const answer = await program.keepClass(changed, version);
  if (answer.ok) await Promise.all([classOf(changed.id).lookAgain(), classes.lookAgainIfWanted(), gym.lookAgainIfWanted()]);
  return answer.ok ? null : answer.fault;
}

/** Keeps what is out of order for a class; null if it was done, else why not. */
export const keepFaults = (kept: KeptClass, faults: readonly PlaceFault[]): Promise<Fault | null> =>
  keep({ ...kept.class, faults }, kept.version);

/** Makes a class; null if it was done, else why not. */
export const makeClass = (made: GymClass): Promise<Fault | null> => keep(made, null);

/** Takes a class away as it was seen; null if it was done, else why not. */
export async function removeClass(kept: KeptClass): Promise<Fault | null> {
  const answer = await program.removeClass(kept.class.id, kept.version);
  if (!answer.ok) return answer.fault;
  classOf(kept.class.id).forget();
  await Promise.all([classes.lookAgainIfWanted(), gym.lookAgainIfWanted()]);
  return null;
}

/**
 * Keeps another plan of a class; null if it was done, else why not. What others changed of it meanwhile stays, unless it
 * is what was changed here.
 */
export async function keepPlan(before: KeptClass, plan: ClassPlan): Promise<Fault | null> {
  const fault = await keep(withPlan(before.class, plan), before.version);
  if (fault?.status !== 409) return fault;
  const now = await program.gymClass(before.class.id);
  if (!now.ok) return now.fault;
  const merged = mergedPlan(before.class, plan, now.value.class);
  if ("plan" in merged) return await keep(withPlan(now.value.class, merged.plan), now.value.version);
  return { ...fault, text: `somebody else changed ${merged.both.join(" and ")} of this class meanwhile` };
}

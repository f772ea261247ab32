import type { Moment } from "./clock.ts";

/** How long the piece of that name has been going for the heat on the floor, in milliseconds; null while it does not run. */
export function millisecondsInto(moment: Moment, piece: string): number | null {
  const { cue, state } = moment;
  if (cue === null || cue.name !== piece || (state !== "running" && state !== "paused")) return null;
  return cue.kind === "work" || cue.kind === "rest" || cue.kind === "tail" ? cue.into_ms + moment.elapsed : null;
}

import type { Clock, Moment } from "./clock.ts";

/** How long the piece of that name has been going for the heat on the floor, in milliseconds; null while it does not run. */
export function millisecondsInto(moment: Moment, piece: string): number | null {
  const { cue, state } = moment;
  if (cue === null || cue.name !== piece || (state !== "running" && state !== "paused")) return null;
  return cue.kind === "work" || cue.kind === "rest" || cue.kind === "tail" ? cue.into_ms + moment.elapsed : null;
}

/** Which of the pieces the clock is in, or was in last; the first one before them all. */
export function pieceOfClock(clock: Clock, moment: Moment, pieces: readonly { readonly title: string }[]): number {
  for (let index = Math.min(moment.index, clock.cues.length - 1); index >= 0; --index) {
    const found = pieces.findIndex((piece) => piece.title === clock.cues[index]?.name);
    if (found >= 0) return found;
  }
  return 0;
}

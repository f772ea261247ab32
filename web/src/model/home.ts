import { listOf, number, objectOf, orNull, type Decoded } from "./decode.ts";
import type { Cue } from "./clock.ts";
import { clock } from "./scores.ts";

const heatHome = objectOf({
  piece: number,
  heat: number,
  people: number,
  first_s: number,
  middle_s: number,
  last_s: number,
  last_late_s: number,
  call_s: orNull(number),
  out_at_call: number,
});
/** When a rehearsal expects a heat home, in seconds from its signal; `call_s` is a good moment for the last call. */
export type HeatHome = Decoded<typeof heatHome>;
export const home = objectOf({ heats: listOf(heatHome) });

/** What is expected of the stretch that runs; null where people do not end it. */
export function homeIn(heats: readonly HeatHome[], cue: Cue | null): HeatHome | null {
  if (cue === null || cue.kind !== "work") return null;
  return heats.find((each) => each.piece === cue.piece && each.heat === cue.heat) ?? null;
}

/** A moment that is right to ten seconds, as a forecast is at best: '12:30'. */
const about = (seconds: number): string => clock(Math.round(seconds / 10) * 10);

/** The three that a coach waits for. */
export const homeFigures = (heat: HeatHome): readonly (readonly [name: string, time: string])[] =>
  heat.people < 3
    ? [["home", about(heat.last_s)]]
    : [
        ["first home", about(heat.first_s)],
        ["half home", about(heat.middle_s)],
        ["last home", heat.last_late_s - heat.last_s < 10 ? about(heat.last_s) : `${about(heat.last_s)} to ${about(heat.last_late_s)}`],
      ];

/** When a last call suits, after so many milliseconds of the piece; null where none is needed. */
export function callWords(heat: HeatHome, elapsed: number): string | null {
  if (heat.call_s === null) return null;
  const out = heat.out_at_call === 1 ? "one is" : `${heat.out_at_call} are`;
  if (elapsed / 1000 < heat.call_s - 15) return `Last call at about ${about(heat.call_s)}: by then ${out} usually still out`;
  return elapsed / 1000 < heat.call_s + 60 ? `Now is a good moment for the last call: ${out} usually still out` : null;
}

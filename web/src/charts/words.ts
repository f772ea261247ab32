import type { ClassTime, Measure, Rehearsal, RehearsedPiece } from "../model/rehearsal.ts";

/** Seconds as a wall clock shows them: `12:05`, `1:02:05`. */
export function clockText(seconds: number): string {
  const all = Math.max(0, Math.round(seconds));
  const s = String(all % 60).padStart(2, "0");
  const minutes = Math.floor(all / 60);
  if (minutes < 60) return `${minutes}:${s}`;
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}:${s}`;
}

/** One score of a piece as it would be written on the wall. */
export function scoreText(piece: RehearsedPiece, value: number): string {
  const round = piece.rounds ? piece.reps_per_round : 0;
  switch (piece.measure) {
    case "seconds":
      return clockText(value);
    case "reps": {
      if (round < 1) return String(Math.round(value));
      const full = Math.floor(value / round + 1e-9);
      return `${full}+${Math.floor(value - full * round + 1e-9)}`;
    }
    case "kg":
      return value > 0 ? `${value.toFixed(1)} kg` : "no load";
    case "m":
      return `${Math.round(value)} m`;
    case "kcal":
      return `${Math.round(value)} kcal`;
  }
}

export const isLowerBetter = (measure: Measure): boolean => measure === "seconds";

/** The range of a person's score in a piece, and whether the cap stops them: "11:20 – 13:05". */
export function rangeText(piece: RehearsedPiece): string {
  if (piece.measure === "seconds" && piece.capped > 0.5) return `cap ${clockText(piece.p50)}`;
  const low = scoreText(piece, piece.p10);
  const high = scoreText(piece, piece.p90);
  return low === high ? low : `${low} – ${high}`;
}

const limiters: Readonly<Record<string, string>> = {
  push: "pushing",
  pull: "pulling",
  legs: "the legs",
  core: "the trunk",
  grip: "the grip",
  pace: "their own pace",
  engine: "breath",
  queue: "waiting for a place",
  clock: "the clock",
};

/** What limits a person, in words. */
export const limiterText = (limiter: string): string => limiters[limiter] ?? limiter;

/** One person's rehearsal in a sentence, for whoever does not see the lane. */
export function personSentence(rehearsal: Rehearsal, personId: string): string {
  const person = rehearsal.people.find((each) => each.id === personId);
  if (!person) return "";
  const parts = person.pieces.map((piece) => {
    const name = rehearsal.pieces[piece.piece] ?? `piece ${piece.piece + 1}`;
    const wait = piece.wait_s >= 1 ? `, waits ${clockText(piece.wait_s)}` : "";
    return `${name} ${rangeText(piece)}, limited by ${limiterText(piece.limiter)}${wait}`;
  });
  return `${person.name}: ${parts.join("; ")}`;
}

/** Whether the class fits its hour, in words. */
export function slackText(timetable: ClassTime): string {
  const { planned_s, p50_s, p90_s, over_share } = timetable;
  if (planned_s === null) return `Takes ${clockText(p50_s)}, at worst ${clockText(p90_s)}; no end is set.`;
  const spare = planned_s - p50_s;
  if (over_share >= 0.05) {
    const share = Math.round(over_share * 100);
    return spare < 0
      ? `Runs over by ${clockText(-spare)}; over in ${share} of 100 runs.`
      : `${clockText(spare)} to spare, but over in ${share} of 100 runs.`;
  }
  return `${clockText(Math.max(0, planned_s - p90_s))} to spare of ${clockText(planned_s)}, even on a slow day.`;
}

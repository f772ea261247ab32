import { clockText, type Coming, type Cue, type Moment } from "../../model/clock.ts";
import { wallLineUp, type PieceLineUp } from "../../model/line_up.ts";

/** What a part of the class is called: 'Warm-up' of 'Warm-up: easy jog, leg swings'. */
export const partName = (cue: Cue): string => cue.name.split(/:\s/)[0] ?? cue.name;

/** What is to be done in a stretch: the lines of the board, or what a part says behind its name. */
export function linesOf(cue: Cue): readonly string[] {
  const said = cue.kind === "part" ? cue.name.slice(partName(cue).length + 1).trim() : "";
  return cue.lines.length > 0 || said === "" ? cue.lines : said.split(/,\s*/);
}

/** The lines of the stretch that runs; where it has none, those of what comes. */
export function linesNow(moment: Moment, coming: Coming | null): { readonly title: string; readonly lines: readonly string[] } {
  const now = moment.cue ? linesOf(moment.cue) : [];
  if (now.length > 0 || coming === null) return { title: "Now", lines: now };
  return { title: "Then", lines: linesOf(coming.cue) };
}

/** Who stands where in the piece that comes, while there is time to find one's place. */
export function lineUpLines(pieces: readonly PieceLineUp[], moment: Moment, coming: Coming | null): readonly string[] {
  const next = moment.cue?.kind === "count-in" ? moment.cue : coming?.cue;
  if (!next || next.piece === null || moment.state === "over") return [];
  if (moment.cue?.piece === next.piece && (moment.cue.kind === "work" || moment.cue.kind === "rest")) return [];
  const piece = pieces.find((each) => each.piece === next.piece);
  return piece ? wallLineUp({ ...piece, people: piece.people.filter((person) => person.heat >= next.heat) }) : [];
}

/** The name of the piece that runs or is first; empty where the word above it says the same. */
export function nameBeside(moment: Moment, cues: readonly Cue[]): string {
  const named = moment.cue ?? cues[0];
  return named && partName(named) !== stateWord(moment) ? partName(named) : "";
}

/** What people do now, in a word. */
export function stateWord(moment: Moment): string {
  if (moment.state === "ready") return "Ready";
  if (moment.state === "paused") return "Paused";
  if (moment.state === "over" || moment.cue === null) return "Done";
  return kindWord(moment.cue);
}

export function kindWord(cue: Cue): string {
  switch (cue.kind) {
    case "part":
      return partName(cue);
    case "count-in":
      return "Get set";
    case "work":
      return "Work";
    case "rest":
      return "Rest";
    case "change":
      return "Change heats";
    case "tail":
      return "Last groups";
  }
}

/** The name of a stretch that comes behind `before`, with its heat and, where it helps to find it, its round and place in it. */
export function cueWords(cue: Cue, before?: Cue): string {
  const heat = cue.heats > 1 ? `, heat ${String(cue.heat + 1)}` : "";
  if (cue.kind === "rest" && before?.kind === "rest" && before.piece === cue.piece)
    return `${cue.name}: rest${heat}, after round ${String(cue.round + 1)}`;
  const round = cue.rounds > 1 ? `, round ${String(cue.round + 1)}` : "";
  const slot = cue.slots > 1 && (cue.kind === "work" || cue.kind === "rest") ? `.${String(cue.slot + 1)}` : "";
  return `${cue.kind === "part" || cue.name === kindWord(cue) ? partName(cue) : `${cue.name}: ${kindWord(cue).toLowerCase()}`}${heat}${round}${slot}`;
}

/** 'Round 3 of 8', 'Heat 1 of 2'; only what there is more than one of. */
export function counters(cue: Cue): readonly string[] {
  return [
    cue.heats > 1 ? `Heat ${String(cue.heat + 1)} of ${String(cue.heats)}` : "",
    cue.rounds > 1 ? `Round ${String(cue.round + 1)} of ${String(cue.rounds)}` : "",
  ].filter(Boolean);
}

/** When what comes next begins. */
export function whenWords(coming: Coming, moment: Moment): string {
  if (coming.in !== null) return `in ${clockText(Math.ceil(coming.in / 1000))}`;
  return moment.state === "paused" || moment.state === "ready" ? "" : "when the coach goes on";
}

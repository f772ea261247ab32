import { flag, listOf, number, objectOf, orNull, text, wordOf, type Decoded } from "./decode.ts";

const cue = objectOf({
  id: text,
  kind: wordOf("part", "count-in", "work", "rest", "change", "tail"),
  name: text,
  piece: orNull(number),
  heat: number,
  heats: number,
  round: number,
  rounds: number,
  slot: number,
  slots: number,
  length_ms: orNull(number),
  ends: wordOf("by-itself", "on-word"),
  counts: wordOf("up", "down"),
  called: flag,
  into_ms: number,
  group_starts_ms: listOf(number),
  lines: listOf(text),
});
export type Cue = Decoded<typeof cue>;

export const clock = objectOf({
  class: text,
  version: number,
  state: wordOf("ready", "running", "paused", "over"),
  at: orNull(objectOf({ cue: number, elapsed_ms: number, length_ms: orNull(number), ends_ms: orNull(number) })),
  ahead: listOf(objectOf({ cue: number, at_ms: number })),
  over_ms: orNull(number),
  last_call_ms: orNull(number),
  last_act: orNull(objectOf({ act: text, who: text, at_ms: number })),
  cues: listOf(cue),
  now_ms: number,
});
export type Clock = Decoded<typeof clock>;

export const programTime = objectOf({ now_ms: number });

/** Where a clock stands at one instant of the program's time. */
export interface Moment {
  readonly state: Clock["state"];
  /** -1 before the start. */
  readonly index: number;
  readonly cue: Cue | null;
  readonly elapsed: number;
  /** What is planned for the cue, with what was added. */
  readonly length: number | null;
  /** How long until the cue ends by itself; null if it waits for the coach. */
  readonly left: number | null;
}

/** The clock at `now`, milliseconds of the program's time: the last cue that began by then. */
export function momentAt(from: Clock, now: number): Moment {
  const at = from.at;
  if (at === null) return { state: from.state, index: -1, cue: null, elapsed: 0, length: null, left: null };
  if (from.state !== "running") return momentIn(from, from.state, at.cue, at.elapsed_ms, true);
  if (from.over_ms !== null && now >= from.over_ms) {
    const last = from.cues.length - 1;
    const length = from.cues[last]?.length_ms ?? 0;
    return momentIn(from, "over", last, length, last === at.cue);
  }
  let begun = from.ahead[0];
  for (const start of from.ahead) if (start.at_ms <= now) begun = start;
  if (!begun) return momentIn(from, "running", at.cue, at.elapsed_ms, true);
  return momentIn(from, "running", begun.cue, Math.max(0, now - begun.at_ms), begun.cue === at.cue);
}

function momentIn(from: Clock, state: Clock["state"], index: number, elapsed: number, current: boolean): Moment {
  const shown = from.cues[index] ?? null;
  const length = current ? (from.at?.length_ms ?? null) : (shown?.length_ms ?? null);
  const ends = current ? (from.at?.ends_ms ?? null) : shown?.ends === "by-itself" ? length : null;
  return { state, index, cue: shown, elapsed, length, left: ends === null ? null : Math.max(0, ends - elapsed) };
}

/** A cue and its place in the class. */
export interface Placed {
  readonly cue: Cue;
  readonly index: number;
}
/** The cues of each part of the class together: an id begins with the part that it is of. */
export function partsOf(cues: readonly Cue[]): readonly (readonly Placed[])[] {
  const parts: Placed[][] = [];
  const partOf = (cue: Cue | undefined) => cue?.id.split(".")[0];
  for (const [index, cue] of cues.entries()) {
    if (parts.length === 0 || partOf(cue) !== partOf(cues[index - 1])) parts.push([]);
    parts.at(-1)?.push({ cue, index });
  }
  return parts;
}

/** The big figure: whole seconds, and whether they are over what was planned. */
export interface Figure {
  readonly seconds: number;
  readonly over: boolean;
}

/** Down: the second that is not over yet, so that zero is the end. Up: the seconds that are over. */
export function figureOf(moment: Moment): Figure {
  const { cue: shown, elapsed, length, left } = moment;
  if (shown === null) return { seconds: 0, over: false };
  const until = left ?? (length === null ? null : length - elapsed);
  if (shown.counts === "up" || until === null) return { seconds: Math.floor(elapsed / 1000), over: false };
  if (until < 0) return { seconds: Math.floor(-until / 1000), over: true };
  return { seconds: Math.ceil(until / 1000), over: false };
}

/** `9:05`, `75:00`. */
export function clockText(seconds: number): string {
  const whole = Math.max(0, Math.trunc(seconds));
  return `${String(Math.floor(whole / 60))}:${String(whole % 60).padStart(2, "0")}`;
}

/** What the people do next: the first cue ahead that is no count-in, and how long until it begins, if that is known. */
export interface Coming {
  readonly cue: Cue;
  readonly in: number | null;
}
export function comingAfter(from: Clock, moment: Moment, now: number): Coming | null {
  const index = from.cues.findIndex((each, at) => at > moment.index && each.kind !== "count-in");
  const found = from.cues[index];
  if (!found) return null;
  const start = from.state === "running" ? from.ahead.find((each) => each.cue === index) : undefined;
  return { cue: found, in: start ? Math.max(0, start.at_ms - now) : null };
}

/** One heat or one group beside the others, with a clock of its own. */
export interface Side {
  readonly name: string;
  readonly state: "waits" | "works" | "done";
  /** Until it starts, or since it did; null if nobody knows yet. */
  readonly time: number | null;
}

function heatSides(from: Clock, moment: Moment, now: number): readonly Side[] {
  const shown = moment.cue;
  if (!shown || shown.heats < 2) return [];
  return Array.from({ length: shown.heats }, (_, heat): Side => {
    const name = `Heat ${String(heat + 1)}`;
    if (heat < shown.heat) return { name, state: "done", time: null };
    const index = from.cues.findIndex((each) => each.piece === shown.piece && each.heat === heat && each.kind === "work");
    const works = shown.kind === "work" || shown.kind === "rest" || shown.kind === "tail";
    if (heat === shown.heat && works) return { name, state: "works", time: shown.into_ms + moment.elapsed };
    const start = from.ahead.find((each) => each.cue === index);
    return { name, state: "waits", time: start && moment.state === "running" ? Math.max(0, start.at_ms - now) : null };
  });
}

function groupSides(moment: Moment): readonly Side[] {
  const shown = moment.cue;
  if (!shown) return [];
  const since = shown.into_ms + moment.elapsed;
  return shown.group_starts_ms.map((start, group): Side => ({
    name: `Group ${String(group + 1)}`,
    state: since < start ? "waits" : "works",
    time: Math.abs(since - start),
  }));
}

/** Heats or groups, if the piece has any: groups of a staggered start first, since they run at once. */
export function sidesOf(from: Clock, moment: Moment, now: number): readonly Side[] {
  const groups = groupSides(moment);
  return groups.length > 0 ? groups : heatSides(from, moment, now);
}

/** What is heard, and when in the program's time. */
export interface ClockSound {
  readonly at: number;
  readonly sound: "count" | "go" | "rest" | "end" | "ready" | "last-minute" | "last-call";
}

const longEnough = 180_000;

function soundOfBegin(of: Cue | undefined): ClockSound["sound"] {
  if (of?.kind === "work") return "go";
  if (of?.kind === "rest" || of?.kind === "change") return "rest";
  return of?.kind === "count-in" ? "ready" : "end";
}

function soundsBeforeEnd(of: Cue, end: number, next: Cue | undefined): readonly ClockSound[] {
  const sounds: ClockSound[] = [];
  if (of.called) for (const before of [3, 2, 1]) sounds.push({ at: end - before * 1000, sound: "count" });
  if (of.kind === "work" && (of.length_ms ?? 0) >= longEnough) sounds.push({ at: end - 60_000, sound: "last-minute" });
  sounds.push({ at: end, sound: soundOfBegin(next) });
  return sounds;
}

/** All that is to be heard from `since` on and before `until`, in order. */
export function soundsBetween(from: Clock, since: number, until: number): readonly ClockSound[] {
  if (from.state !== "running") return [];
  const sounds: ClockSound[] = [];
  from.ahead.forEach((start, place) => {
    const running = from.cues[start.cue];
    if (!running) return;
    const end = from.ahead[place + 1]?.at_ms ?? from.over_ms;
    if (start.at_ms >= until || (end !== null && end < since)) return;
    if (end !== null) sounds.push(...soundsBeforeEnd(running, end, from.cues[start.cue + 1]));
    const signal = start.at_ms - running.into_ms;
    for (const group of running.group_starts_ms.slice(1))
      for (const before of [3, 2, 1, 0])
        sounds.push({ at: signal + group - before * 1000, sound: before === 0 ? "go" : "count" });
  });
  if (from.last_call_ms !== null) sounds.push({ at: from.last_call_ms, sound: "last-call" });
  return sounds.filter(({ at }) => at >= since && at < until).sort((a, b) => a.at - b.at);
}

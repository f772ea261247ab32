import type { Stretch } from "./axis.ts";
import { kindOf, type DrawnMovement, type Kind } from "./kinds.ts";
import type { ClassTime, Rehearsal, RehearsedPerson, RehearsedStep } from "../model/rehearsal.ts";

/** A stretch of one person's time, in seconds of the class. */
export interface Bit {
  readonly from: number;
  readonly to: number;
  readonly kind: Kind;
}

/** One line of work in one round, in seconds of the class. */
export interface LaneStep {
  readonly from: number;
  readonly to: number;
  readonly line: number;
  readonly piece: number;
  readonly step: RehearsedStep;
}

/** When a person ends a timed piece: the middle run, and four of five between `early` and `late`. */
export interface Finish {
  readonly early: number;
  readonly middle: number;
  readonly late: number;
}

export interface Lane {
  readonly id: string;
  readonly name: string;
  readonly bits: readonly Bit[];
  readonly steps: readonly LaneStep[];
  readonly finishes: readonly Finish[];
}

/** Seconds of the class at which each piece starts in the middle run, by its index. */
export function pieceStarts(rehearsal: Rehearsal): readonly number[] {
  const starts = rehearsal.pieces.map(() => 0);
  for (const box of rehearsal.timetable.boxes) if (box.piece !== null) starts[box.piece] = box.start_p50_s;
  return starts;
}

/** The stretch of the class in which a piece runs in the middle run; null if no box says so. */
export function stretchOfPiece(timetable: ClassTime, piece: number): Stretch | null {
  const boxes = timetable.boxes.filter((box) => box.piece === piece);
  const [first] = boxes;
  return first ? { from: first.start_p50_s, to: Math.max(...boxes.map((box) => box.end_p50_s)) } : null;
}

/** Steps that fewer runs than this reach are left out: they would draw work that hardly anybody does. */
const leastShare = 0.5;

/**
 * The step as it goes on the floor: the wait for the place first, then as many sets as the middle run needs with the
 * rest spread evenly between them. What is left of the step (walking, changing) counts as rest.
 */
export function bitsOfStep(step: RehearsedStep, kind: Kind, start: number): Bit[] {
  const from = start + step.start_s;
  const to = start + step.end_s;
  if (!(to > from)) return [];
  const bits: Bit[] = [];
  const work = Math.min(step.work_s, to - from);
  const wait = Math.min(step.wait_s, to - from - work);
  let at = from;
  if (wait >= 1) {
    bits.push({ from: at, to: at + wait, kind: "wait" });
    at += wait;
  }
  const sets = Math.max(1, Math.round(step.sets));
  const restless = to - at - work;
  const gap = restless >= 1 ? restless / sets : 0;
  const set = (to - at - gap * sets) / sets;
  for (let i = 0; i < sets; ++i) {
    bits.push({ from: at, to: at + set, kind });
    if (gap > 0) bits.push({ from: at + set, to: at + set + gap, kind: "rest" });
    at += set + gap;
  }
  return bits;
}

function laneOf(person: RehearsedPerson, starts: readonly number[], movements: ReadonlyMap<string, DrawnMovement>): Lane {
  const bits: Bit[] = [];
  const steps: LaneStep[] = [];
  const finishes: Finish[] = [];
  for (const piece of person.pieces) {
    const start = starts[piece.piece] ?? 0;
    let last = start;
    for (const step of piece.steps) {
      if (step.share < leastShare) continue;
      const from = start + step.start_s;
      if (from - last >= 1 && last > start) bits.push({ from: last, to: from, kind: "rest" });
      bits.push(...bitsOfStep(step, kindOf(movements.get(step.version)), start));
      last = Math.max(last, start + step.end_s);
      steps.push({ from, to: start + step.end_s, line: step.line, piece: piece.piece, step });
    }
    if (piece.measure === "seconds" && piece.steps.length > 0)
      finishes.push({ early: start + piece.p10, middle: start + piece.p50, late: start + piece.p90 });
  }
  return { id: person.id, name: person.name, bits, steps, finishes };
}

/** One lane per person in the order of the rehearsal, in seconds of the class. */
export function lanesOf(rehearsal: Rehearsal, movements: ReadonlyMap<string, DrawnMovement>): readonly Lane[] {
  const starts = pieceStarts(rehearsal);
  return rehearsal.people.map((person) => laneOf(person, starts, movements));
}

/** The kinds that occur in any of the lanes, for the legend. */
export function kindsIn(lanes: readonly Lane[]): ReadonlySet<Kind> {
  return new Set(lanes.flatMap((lane) => lane.bits.map((bit) => bit.kind)));
}

/** The step that a person is at, at that second of the class; between steps the one before. */
export function stepAt(lane: Lane, second: number): LaneStep | null {
  let found: LaneStep | null = null;
  for (const step of lane.steps) if (step.from <= second && (!found || step.from >= found.from)) found = step;
  return found;
}

/** The people who do any of a line's work, for a finding that names nobody. */
export function peopleAtLine(lanes: readonly Lane[], line: number): readonly string[] {
  return lanes.filter((lane) => lane.steps.some((step) => step.line === line)).map((lane) => lane.id);
}

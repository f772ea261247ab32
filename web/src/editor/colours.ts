import type { Diagnostic, Understood } from "../model/reading.ts";
import { stretchesIn, type Stretch } from "./places.ts";

export type Severity = Diagnostic["severity"];

/** What the editor shows of one reading; `text` is what was read. */
export interface ShownReading {
  readonly text: string;
  readonly understood: readonly Understood[];
  readonly doubts: readonly Diagnostic[];
}

/** A stretch with the way it is coloured. `number` marks the figures within a line of work. */
export interface Colour extends Stretch {
  readonly as: "step" | "rule" | "words" | "number";
}

/** A doubt with where it stands in the text, wide enough to be seen. */
export interface PlacedDoubt extends Stretch {
  readonly doubt: Diagnostic;
}

const figures = /\d[\d.,:/]*/g;

/** The pieces of a line that no stretch covers. */
function gaps(line: Stretch, covered: readonly Stretch[]): Stretch[] {
  const left: Stretch[] = [];
  let at = line.from;
  for (const each of covered) {
    if (each.to <= at || each.from >= line.to) continue;
    if (each.from > at) left.push({ from: at, to: each.from });
    at = Math.max(at, each.to);
  }
  if (at < line.to) left.push({ from: at, to: line.to });
  return left;
}

/** Colours of a text in its order: what was understood as it was, everything else as words kept for people. */
export function coloursOf(reading: ShownReading): Colour[] {
  const { text } = reading;
  const stretch = stretchesIn(text);
  const known = reading.understood
    .map((each): Colour => ({ ...stretch(each), as: each.as }))
    .sort((a, b) => a.from - b.from || a.to - b.to);
  const steps = known.filter((each) => each.as === "step");
  const colours: Colour[] = [...steps];
  for (const rule of known) {
    if (rule.as === "rule") for (const gap of gaps(rule, steps)) colours.push({ ...gap, as: "rule" });
  }
  let from = 0;
  for (const line of text.split("\n")) {
    for (const gap of gaps({ from, to: from + line.length }, known)) {
      if (/[\p{L}\p{N}]/u.test(text.slice(gap.from, gap.to))) colours.push({ ...gap, as: "words" });
    }
    from += line.length + 1;
  }
  for (const step of steps) {
    for (const found of text.slice(step.from, step.to).matchAll(figures)) {
      const at = step.from + found.index;
      colours.push({ from: at, to: at + found[0].length, as: "number" });
    }
  }
  return colours.sort((a, b) => a.from - b.from || b.to - a.to);
}

const worst: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

/** Doubts in the order of the text, the graver first where two begin together. */
export function placedDoubts(reading: ShownReading): PlacedDoubt[] {
  const stretch = stretchesIn(reading.text);
  return reading.doubts
    .map((doubt) => {
      const { from, to } = stretch(doubt);
      return { from, to: Math.max(to, Math.min(from + 1, reading.text.length)), doubt };
    })
    .sort((a, b) => a.from - b.from || worst[a.doubt.severity] - worst[b.doubt.severity]);
}

/** How many of each severity, in words: "2 errors, 1 note"; "nothing doubtful" when there are none. */
export function doubtsInWords(doubts: readonly Diagnostic[]): string {
  const parts: string[] = [];
  for (const severity of ["error", "warning", "note"] as const) {
    const count = doubts.filter((each) => each.severity === severity).length;
    if (count > 0) parts.push(`${count} ${severity}${count > 1 ? "s" : ""}`);
  }
  return parts.length > 0 ? parts.join(", ") : "nothing doubtful";
}

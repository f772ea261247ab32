import { clockText } from "../../charts/words.ts";
import type { Cut } from "../../model/hour_plan.ts";
import type { CapTarget, Consequences, RepairPlan, Target } from "../../model/repairs.ts";

/** One figure of a class as it is now and as it would be. */
export interface Figure {
  readonly name: string;
  readonly now: string;
  readonly then: string;
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** What a board does to the class; `work` is measured against doing nothing, null where nothing can be said. */
const figures: readonly (readonly [string, (told: Consequences, nothing: Consequences) => string | null])[] = [
  ["waits each", (told) => clockText(told.wait_s)],
  ["finish inside the cap", (told) => percent(told.finished_share)],
  ["class ends after", (told) => clockText(told.end_p50_s)],
  ["on a slow day", (told) => clockText(told.end_p90_s)],
  ["work kept", (told, nothing) => (nothing.work_s > 0 ? percent(told.work_s / nothing.work_s) : "100 %")],
  ["as it is meant for", (told) => (told.off_intent_share === null ? null : percent(1 - told.off_intent_share))],
];

/** The figures of doing nothing beside those of a change. */
export const figuresOf = (nothing: Consequences, after: Consequences): readonly Figure[] =>
  figures.flatMap(([name, say]) => {
    const now = say(nothing, nothing);
    const then = say(after, nothing);
    return now === null || then === null ? [] : [{ name, now, then }];
  });

/** The middle half of a level: '16:20 to 19:40', '4.8 to 6.2 rounds'. */
export function aimText(target: Pick<Target, "measure" | "in_rounds">, level: Target["levels"][number]): string {
  if (target.measure === "seconds") return `${clockText(level.from)} to ${clockText(level.to)}`;
  if (target.in_rounds) return `${level.from.toFixed(1)} to ${level.to.toFixed(1)} rounds`;
  return `${Math.round(level.from)} to ${Math.round(level.to)} ${target.measure}`;
}

/** '86 % are home by then, 14 % by 20:00'. */
export const homeText = (cap: CapTarget): string =>
  `${percent(cap.home_share)} are home by then` +
  (cap.now_s === null || cap.now_s === cap.seconds ? "" : `, ${percent(cap.home_now_share)} by ${clockText(cap.now_s)}`);

/** The line of a text by its number, counted from 1. */
export const lineOf = (text: string, number: number): string => (text.split("\n")[number - 1] ?? "").trim();

const isMostlyOver = (told: Consequences): boolean => told.over_share > 0.5;

/** Whether most runs of the class end late, whichever small change is made or none. */
export const isTooShort = ({ before, repairs }: RepairPlan): boolean =>
  isMostlyOver(before) && repairs.every(({ after }) => isMostlyOver(after));

/** That the hour is too short, and that no small change mends it. */
export const tooShortWords = ({ before }: RepairPlan): string =>
  `The hour is too short for this board: ${percent(before.over_share)} of the runs end late, and no small change mends that.`;

/** What to leave out first of what can be cut, in the order of cutting. */
export function cutFirstWords(cuts: readonly Cut[]): string {
  const [first] = cuts;
  if (!first) return "Nothing on it can be cut that would give time: give the class more minutes, or chalk less.";
  return `Cut first: ${first.cut}. It gives ${clockText(first.gives_s)}; then nine classes in ten are over after ${clockText(first.end_p90_s)}.`;
}

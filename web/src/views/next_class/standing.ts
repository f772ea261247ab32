import type { Comer } from "../../model/brief.ts";
import { count, daysBetween } from "../../ui/words.ts";

/** What a coach wants to know of somebody before they stand there; null where there is nothing. */
export function standingWords(comer: Comer, day: string | null): string | null {
  if (comer.standing === "first") return "first class on record";
  if (comer.standing === "back" && comer.last_came !== null && day !== null) {
    const weeks = Math.floor(daysBetween(comer.last_came, day) / 7);
    return `back after ${count(weeks, "week", "weeks")}`;
  }
  return null;
}

/** Those about whom the coach is told something, and the others. */
export function sortComers(people: readonly Comer[]): { readonly told: readonly Comer[]; readonly others: readonly Comer[] } {
  const tells = (each: Comer) =>
    each.standing === "first" || each.standing === "back" || each.actions.length > 0 || each.late_s > 0 || each.marks === 0;
  return { told: people.filter(tells), others: people.filter((each) => !tells(each)) };
}

/** What stands beside somebody's name, shortest news first. */
export function tagsOf(comer: Comer, day: string | null): readonly string[] {
  const late = comer.late_s > 0 ? `${Math.round(comer.late_s / 60)} min late` : null;
  const unknown = comer.marks === 0 ? "no marks yet" : null;
  return [standingWords(comer, day), late, unknown].filter((tag) => tag !== null);
}

/** People of whom the same is told and nothing else. */
export interface Alike {
  readonly tag: string;
  readonly people: readonly Comer[];
}

/** With more than so many of a kind, a line for each would hide the others. */
const mostLines = 5;

/** Those told of one by one, and those of whom many have the same one tag, told of together. */
export function gatherAlike(told: readonly Comer[], day: string | null): { readonly single: readonly Comer[]; readonly alike: readonly Alike[] } {
  const byTag = new Map<string, Comer[]>();
  for (const comer of told) {
    const tags = tagsOf(comer, day);
    const [tag] = tags;
    if (tag !== undefined && tags.length === 1 && comer.actions.length === 0) byTag.set(tag, [...(byTag.get(tag) ?? []), comer]);
  }
  const alike = [...byTag].filter(([, people]) => people.length > mostLines).map(([tag, people]) => ({ tag, people }));
  const gathered = new Set(alike.flatMap(({ people }) => people));
  return { single: told.filter((comer) => !gathered.has(comer)), alike };
}

/** The class in a line: how many come, how many are new, back, or do something else instead. */
export function classWords(people: readonly Comer[]): string {
  const of = (fits: (each: Comer) => boolean) => people.filter(fits).length;
  const parts = [
    count(people.length, "comes", "come"),
    ...saidIf(of((each) => each.standing === "first"), "for the first time"),
    ...saidIf(of((each) => each.standing === "back"), "back after a while"),
    ...saidIf(of((each) => each.actions.length > 0), "with something to avoid"),
    ...saidIf(of((each) => each.late_s > 0), "late"),
  ];
  return parts.join(", ");
}

const saidIf = (n: number, words: string): readonly string[] => (n > 0 ? [`${n} ${words}`] : []);

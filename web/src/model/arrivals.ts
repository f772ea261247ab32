import { flag, listOf, number, objectOf, orNull, text, wordOf, type Decoded } from "./decode.ts";
import type { Letter, Outbox } from "./outbox.ts";

const state = wordOf("here", "expected", "away");
export type ArrivalState = Decoded<typeof state>;

const arriving = objectOf({ id: text, name: text, state, late_s: number, walk_in: flag, told: listOf(text) });
/** Somebody on the list at the door; `told` is what they do otherwise today, in action words. */
export type Arriving = Decoded<typeof arriving>;

export const arrivals = objectOf({ people: listOf(arriving) });
export type Arrivals = Decoded<typeof arrivals>;

const atTheDoor = objectOf({
  heads: number,
  slack_s: orNull(number),
  queue_at: text,
  queue_s: number,
  last_home_s: orNull(number),
});
/** What the list does to the hour, in a sentence and in its figures. */
export const listEffect = objectOf({ words: text, planned: atTheDoor, now: atTheDoor });

export const arrivalPath = (classId: string) => `/api/classes/${encodeURIComponent(classId)}/arrivals`;
export const walkInPath = (classId: string) => `/api/classes/${encodeURIComponent(classId)}/walk-ins`;

/** Whether what is sent there changes who is on the list of the class. */
export const isOfList = (path: string, classId: string): boolean =>
  path === walkInPath(classId) || path === arrivalPath(classId) || path === `${arrivalPath(classId)}/nobody-else`;

interface Tick {
  readonly person?: string;
  readonly state?: ArrivalState;
  readonly late_s?: number;
  readonly name?: string;
}

/** The list with a tick that is still on its way. */
function withTick(people: readonly Arriving[], letter: Letter, classId: string): readonly Arriving[] {
  const tick = letter.body as Tick;
  if (letter.path === walkInPath(classId)) {
    const id = `walk-in-${letter.key}`;
    if (people.some((each) => each.id === id)) return people;
    return [...people, { id, name: tick.name ?? "", state: "here", late_s: tick.late_s ?? 0, walk_in: true, told: ["first day"] }];
  }
  if (letter.path === `${arrivalPath(classId)}/nobody-else`)
    return people.map((each) => (each.state === "expected" ? { ...each, state: "away" } : each));
  if (letter.path !== arrivalPath(classId)) return people;
  return people.map((each) =>
    each.id === tick.person ? { ...each, state: tick.state ?? each.state, late_s: tick.late_s ?? 0 } : each,
  );
}

/** The list as it will be when everything on its way has come, by name. */
export function listWith(kept: Arrivals, outbox: Outbox, classId: string): readonly Arriving[] {
  const waiting = outbox.filter((each) => each.refused === null);
  const people = waiting.reduce((list: readonly Arriving[], letter) => withTick(list, letter, classId), kept.people);
  return [...people].sort((a, b) => a.name.localeCompare(b.name));
}

/** '12 here, 3 expected, 1 does not come'. */
export function countWords(people: readonly Arriving[]): string {
  const of = (state: ArrivalState) => people.filter((each) => each.state === state).length;
  const away = of("away");
  return [`${of("here")} here`, `${of("expected")} expected`, away ? `${away} not coming` : ""].filter(Boolean).join(", ");
}

/** How late somebody is who comes at that time of the class's day, in whole minutes; 0 before it begins or on another day. */
export function minutesLate(date: string | null, start: string | null, now: Date): number {
  const met = /^(\d\d?):(\d\d)$/.exec(start ?? "");
  const two = (n: number) => String(n).padStart(2, "0");
  const today = `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  if (!met || date !== today) return 0;
  const late = now.getHours() * 60 + now.getMinutes() - Number(met[1]) * 60 - Number(met[2]);
  return late > 0 && late < 180 ? late : 0;
}

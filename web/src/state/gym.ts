import type { Answer } from "../api/client.ts";
import type { Topic } from "../api/events.ts";
import { Kept } from "./kept.ts";
import { program } from "./program.ts";

const all: Kept<unknown>[] = [];

function kept<T>(ask: () => Promise<Answer<T>>, ...topics: Topic[]): Kept<T> {
  const made = new Kept(ask, topics);
  all.push(made as Kept<unknown>);
  return made;
}

export const gym = kept(program.gym, "classes", "hall");
export const boards = kept(program.boards, "boards", "house");
export const classes = kept(program.classes, "classes");
export const people = kept(program.people, "people");
export const floorPeople = kept(program.floorPeople, "people", "classes");
export const hall = kept(program.hall, "hall");
export const house = kept(program.house, "house");
export const movements = kept(program.movements);

const classesById = new Map<string, ReturnType<typeof keptClassOf>>();
const keptClassOf = (id: string) => kept(() => program.gymClass(id), "classes");

/** One class, looked at again when any class changed. */
export function classOf(id: string): ReturnType<typeof keptClassOf> {
  const known = classesById.get(id) ?? keptClassOf(id);
  classesById.set(id, known);
  return known;
}

/** Tells everything that was looked at what changed. */
export function tellChange(topic: Topic): void {
  for (const each of all) each.heard(topic);
}

/** Forgets everything: for when somebody else signs in. */
export function forgetAll(): void {
  for (const each of all) each.forget();
}

import { listOf, number, objectOf, orNull, text, type Decoded } from "./decode.ts";

const note = objectOf({ number, person: orNull(text), text, until: orNull(text), by: text, at: text });
/** A word to the coaches; `person` null: of nobody in particular. */
export type Note = Decoded<typeof note>;
export const notes = listOf(note);

/** The newest first. */
const newestFirst = (all: readonly Note[]): readonly Note[] => [...all].sort((a, b) => b.at.localeCompare(a.at) || b.number - a.number);

/** What is told of one person. */
export const notesOn = (all: readonly Note[], person: string): readonly Note[] =>
  newestFirst(all.filter((each) => each.person === person));

/** What is told of those who come and of nobody in particular, and apart from it what is told of others. */
export function notesForClass(all: readonly Note[], come: readonly string[]): { readonly here: readonly Note[]; readonly elsewhere: readonly Note[] } {
  const here = (each: Note) => each.person === null || come.includes(each.person);
  return { here: newestFirst(all.filter(here)), elsewhere: newestFirst(all.filter((each) => !here(each))) };
}

/** Who said it and when, and how long it holds; a person's own words need no name. */
export function noteWords(each: Note, day: (date: string) => string): string {
  const by = each.by === each.person ? "" : `by ${each.by}, `;
  return `${by}${day(each.at.slice(0, 10))}${each.until ? `, until ${day(each.until)}` : ""}`;
}

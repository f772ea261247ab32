import { listOf, number, objectOf, orNull, tableOf, text, type Decoded } from "./decode.ts";

/** One line of the table of people: cells by column as they are written, empty ones left out. */
export const personRow = tableOf(text);
export type PersonRow = Decoded<typeof personRow>;

export const peopleTable = objectOf({ version: text, columns: listOf(text), rows: listOf(personRow) });
export type PeopleTable = Decoded<typeof peopleTable>;

/** A person as the floor may see them: what they do instead, and no more. */
export const floorPerson = objectOf({ id: text, name: text, actions: listOf(text) });
export type FloorPerson = Decoded<typeof floorPerson>;
export const floorPeople = objectOf({ rows: listOf(floorPerson) });

const badCell = objectOf({ line: number, row: text, column: text, text });
export type BadCell = Decoded<typeof badCell>;

/** What a table that was sent says, or every cell of it that cannot be read. Nothing of it is kept. */
export const peoplePreview = objectOf({
  version: orNull(text),
  columns: orNull(listOf(text)),
  rows: orNull(listOf(personRow)),
  notes: listOf(text),
  bad: listOf(badCell),
});
export type PeoplePreview = Decoded<typeof peoplePreview>;

import { flag, listOf, objectOf, orElse, orNull, text, wordOf, type Decoded } from "./decode.ts";

export const role = wordOf("owner", "coach", "relief", "person", "screen");
export type Role = Decoded<typeof role>;

/** Somebody who may sign in. `class` is of a relief coach, `person` of a person, `link` only just after it was made. */
export const account = objectOf({ name: text, role, class: orNull(text), person: orNull(text), link: orNull(text) });
export type Account = Decoded<typeof account>;
export const accounts = listOf(account);

/** Who is signed in: `role` null is nobody, and then `first_start` says that there is no owner yet. */
export const me = objectOf({
  name: orElse(text, ""),
  role: orNull(role),
  class: orNull(text),
  person: orNull(text),
  first_start: orElse(flag, false),
});
export type Me = Decoded<typeof me>;

/** Whether somebody plans classes and boards: a relief coach takes one class as it is. */
export const isCoach = (who: Me): boolean => who.role === "owner" || who.role === "coach";

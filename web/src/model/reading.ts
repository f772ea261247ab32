import { anything, listOf, number, objectOf, orElse, orNull, text, wordOf, type Decoded } from "./decode.ts";

const diagnostic = objectOf({
  line: number,
  column: number,
  length: number,
  severity: wordOf("note", "warning", "error"),
  text,
  name: text,
  hint: orElse(text, ""),
  repairs: orElse(listOf(text), []),
});
export type Diagnostic = Decoded<typeof diagnostic>;

const understood = objectOf({ line: number, column: number, length: number, as: wordOf("step", "rule") });
/** Where a line of work, or a heading, clock or condition stands in the text; counted in characters from 1. */
export type Understood = Decoded<typeof understood>;

/** A board said back. The blocks are the program's own; the page shows sentences. */
export const reading = objectOf({
  title: text,
  blocks: listOf(anything),
  fixed_seconds: orNull(number),
  reading: listOf(text),
  understood: listOf(understood),
  diagnostics: listOf(diagnostic),
});
export type Reading = Decoded<typeof reading>;

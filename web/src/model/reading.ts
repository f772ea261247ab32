import { anything, listOf, number, objectOf, orElse, orNull, text, wordOf, type Decoded } from "./decode.ts";

const diagnostic = objectOf({
  line: number,
  column: number,
  severity: wordOf("note", "warning", "error"),
  text,
  name: text,
  hint: orElse(text, ""),
  repairs: orElse(listOf(text), []),
});
export type Diagnostic = Decoded<typeof diagnostic>;

/** A board said back. The blocks are the program's own; the page shows sentences. */
export const reading = objectOf({
  title: text,
  blocks: listOf(anything),
  fixed_seconds: orNull(number),
  reading: listOf(text),
  diagnostics: listOf(diagnostic),
});
export type Reading = Decoded<typeof reading>;

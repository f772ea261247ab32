/** A stretch of the board as the program names it: line and column from 1, both counted in characters. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly length: number;
}

/** The same stretch in the units of a JavaScript string. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Where each line of the text begins, in the units of a JavaScript string. */
function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return starts;
}

/** So many characters on from a position; characters beyond the basic plane take two units. */
function forward(text: string, from: number, characters: number): number {
  let at = from;
  for (let i = 0; i < characters && at < text.length; ++i) at += (text.codePointAt(at) ?? 0) > 0xffff ? 2 : 1;
  return at;
}

/** Turns places into stretches of one text. A place outside the text ends where the text does. */
export function stretchesIn(text: string): (place: Place) => Stretch {
  const starts = lineStarts(text);
  return (place) => {
    const line = Math.min(Math.max(place.line, 1), starts.length) - 1;
    const from = forward(text, starts[line] ?? 0, place.column - 1);
    return { from, to: forward(text, from, place.length) };
  };
}

/** The whole of a line, counted from 1, without its end; null if the text has no such line. */
export function lineStretch(text: string, line: number): Stretch | null {
  const starts = lineStarts(text);
  const from = starts[line - 1];
  if (from === undefined) return null;
  const next = starts[line];
  return { from, to: next === undefined ? text.length : next - 1 };
}

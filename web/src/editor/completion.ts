/** A movement as the catalogue names it. */
export interface NamedMovement {
  readonly id: string;
  readonly name: string;
  readonly aliases: readonly string[];
}

export interface Suggestion {
  /** What is written onto the board. */
  readonly word: string;
  /** The movement's full name, to tell it by. */
  readonly name: string;
}

/** The words being typed: from after the last figure, bracket or separator of the line up to the caret. */
export function wordsBefore(line: string): { readonly from: number; readonly words: string } {
  const found = /[\p{L}][\p{L}' -]*$/u.exec(line);
  if (!found) return { from: line.length, words: "" };
  return { from: found.index, words: found[0] };
}

const unitsAndClocks = new Set(
  "m km k kg lb cal kcal reps rep x min mins s sec rds rft amrap emom rest cap for time rounds round of".split(" "),
);

function ranked(candidate: string, wanted: string): number | null {
  const name = candidate.toLowerCase();
  if (name === wanted) return 0;
  if (name.startsWith(wanted)) return 1;
  if (name.split(/[ -]/).some((word) => word.startsWith(wanted))) return 2;
  return null;
}

/** The best of a movement's names for what was typed; null if none fits. */
function bestName(movement: NamedMovement, wanted: string): { word: string; rank: number } | null {
  let best: { word: string; rank: number } | null = null;
  for (const word of [...movement.aliases, movement.name]) {
    const rank = ranked(word, wanted);
    if (rank !== null && (best === null || rank < best.rank)) best = { word, rank };
  }
  return best;
}

/**
 * Movements whose names begin with what was typed, or have a word that does; the closest first, at most `most`.
 * Nothing before two letters, and nothing after a unit or a word of the clock.
 */
export function suggestionsFor(
  typed: string,
  movements: readonly NamedMovement[],
  most = 8,
): readonly Suggestion[] {
  const wanted = typed.trim().toLowerCase();
  if (wanted.length < 2 || unitsAndClocks.has(wanted)) return [];
  const found: { suggestion: Suggestion; rank: number }[] = [];
  for (const movement of movements) {
    const best = bestName(movement, wanted);
    if (best) found.push({ suggestion: { word: best.word, name: movement.name }, rank: best.rank });
  }
  found.sort(
    (a, b) =>
      a.rank - b.rank ||
      a.suggestion.word.length - b.suggestion.word.length ||
      a.suggestion.word.localeCompare(b.suggestion.word),
  );
  return found.slice(0, most).map((each) => each.suggestion);
}

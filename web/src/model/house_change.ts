import type { House } from "./gym.ts";

/** One shorthand of the gym and the movement that it means, as they are typed. */
export interface Shorthand {
  readonly word: string;
  readonly movement: string;
}

export const shorthandsOf = (house: House): readonly Shorthand[] =>
  Object.entries(house.words).map(([word, movement]) => ({ word, movement }));

/** The gym's own words as they are kept, or what is wrong with a line of them; lines without a word are left out. */
export function wordsOf(lines: readonly Shorthand[]): { readonly words: House["words"] } | { readonly wrong: string } {
  const words: Record<string, string> = {};
  for (const line of lines) {
    const word = line.word.trim().toLowerCase();
    const movement = line.movement.trim();
    if (word === "" && movement === "") continue;
    if (word === "") return { wrong: `Say which word means ${movement}.` };
    if (movement === "") return { wrong: `Say what '${word}' means.` };
    if (Object.hasOwn(words, word)) return { wrong: `'${word}' stands there twice.` };
    words[word] = movement;
  }
  return { words };
}

/** A question that a board leaves open and the house answers: what is chalked, and the answers with their values. */
export interface HouseQuestion {
  readonly key: Exclude<keyof House, "words">;
  readonly chalked: string;
  readonly answers: readonly (readonly [value: string | boolean, words: string])[];
}

/** What the house decides, in the words of a coach. */
export const houseQuestions: readonly HouseQuestion[] = [
  { key: "mass_unit", chalked: "A load without a unit: 12 swings 24", answers: [["kg", "kilograms"], ["lb", "pounds"]] },
  {
    key: "tiers",
    chalked: "Two loads: 24/16",
    answers: [["by-sex", "the first for men, the second for women"], ["by-choice", "the heavier and the lighter, each as they choose"]],
  },
  {
    key: "tempo",
    chalked: "Four figures of a tempo: 3010",
    answers: [["down-pause-up-top", "down, pause, up, at the top"], ["up-top-down-pause", "up, at the top, down, pause"]],
  },
  { key: "legs_counted_together", chalked: "9 each leg", answers: [[true, "counts 18"], [false, "counts 9"]] },
  { key: "pull_up_may_swing", chalked: "A plain pull-up", answers: [[false, "is strict"], [true, "may swing"]] },
  { key: "burpee_has_push_up", chalked: "A plain burpee", answers: [[true, "has a push-up"], [false, "goes down and up without one"]] },
  { key: "minute_one_is_odd", chalked: "Odd and even minutes", answers: [[true, "the first minute is odd"], [false, "the first minute is even"]] },
  { key: "last_rest_counts", chalked: "The rest after the last interval", answers: [[true, "counts"], [false, "is left out"]] },
  {
    key: "keep_place_while_resting",
    chalked: "Whoever rests at a bar or machine",
    answers: [[true, "keeps the place"], [false, "lets the next one in"]],
  },
];

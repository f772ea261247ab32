/** What a person is doing at a time of the class, as the picture tells it. */
export const kinds = ["run", "machine", "push", "pull", "legs", "trunk", "carry", "other", "rest", "wait"] as const;
export type Kind = (typeof kinds)[number];

/** What the catalogue says of a movement that decides how it is drawn. */
export interface DrawnMovement {
  readonly id: string;
  readonly name: string;
  readonly category: string;
  readonly patterns: readonly string[];
}

export const kindNames: Readonly<Record<Kind, string>> = {
  run: "run or walk",
  machine: "machine",
  push: "push",
  pull: "pull",
  legs: "legs",
  trunk: "trunk",
  carry: "carry",
  other: "other work",
  rest: "rest",
  wait: "wait",
};

const byPattern: Readonly<Record<string, Kind>> = {
  push: "push",
  pull: "pull",
  squat: "legs",
  lunge: "legs",
  hinge: "legs",
  jump: "legs",
  trunk: "trunk",
  carry: "carry",
  locomotion: "run",
};

/** How work at a movement is drawn: by its kit where that says it all, else by its first pattern. */
export function kindOf(movement: DrawnMovement | undefined): Kind {
  if (!movement) return "other";
  if (movement.category === "run") return "run";
  if (movement.category === "ergometer") return "machine";
  if (movement.category === "carry") return "carry";
  return byPattern[movement.patterns[0] ?? ""] ?? "other";
}

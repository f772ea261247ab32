import type { Finding } from "../model/rehearsal.ts";

/** What a coach may do about a finding of each kind; nothing is tried out here. */
const help: Readonly<Record<string, string>> = {
  queue: "odd start with ..., heats 2, start every 15 s, or a 2nd station",
  "nobody-finishes": "fewer rounds or reps, or a longer cap",
  "over-cap": "fewer rounds or reps, or a longer cap",
  "no-full-round": "fewer reps in the round, or an easier version for them",
  "over-class": "minutes from the longest part, or rounds from the last piece",
  "last-runner-late": "a shorter leg for them, or let them leave first",
  "kit-short": "sharing, heats, or the next size down",
  "route-closed": "another distance, or a machine",
  "hall-too-full": "heats 2, or part of the class outside",
  "free-text": "the catalogue's name for it, or a word of the house",
  "misses-intent": "fitting the board to the people, or another intent",
};

const gravity: Readonly<Record<Finding["severity"], number>> = { problem: 0, warning: 1, note: 2 };

/** Findings with the gravest first, otherwise as the program ranked them. */
export function gravestFirst(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort((a, b) => gravity[a.severity] - gravity[b.severity]);
}

/** Findings of one kind and weight, told in one breath, and what may help. */
export interface Gathered {
  readonly severity: Finding["severity"];
  readonly findings: readonly Finding[];
  readonly help: string | null;
}

/** The gravest first, those of one kind and weight together; what is said twice stands once. */
export function gathered(findings: readonly Finding[]): readonly Gathered[] {
  const groups = new Map<string, Finding[]>();
  for (const each of gravestFirst(findings)) {
    const key = `${each.severity} ${each.finding}`;
    const group = groups.get(key) ?? [];
    if (!group.some((other) => other.text === each.text)) group.push(each);
    groups.set(key, group);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    return first ? [{ severity: first.severity, findings: group, help: help[first.finding] ?? null }] : [];
  });
}

import type { Finding } from "../model/rehearsal.ts";

const gravity: Readonly<Record<Finding["severity"], number>> = { problem: 0, warning: 1, note: 2 };

/** Findings with the gravest first, otherwise as the program ranked them. */
export function gravestFirst(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort((a, b) => gravity[a.severity] - gravity[b.severity]);
}

/** Findings of one kind and weight, told in one breath, and what the program says may help. */
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
    return first ? [{ severity: first.severity, findings: group, help: first.help }] : [];
  });
}

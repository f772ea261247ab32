import { peopleAtLine, type Lane } from "../../charts/lanes.ts";
import type { Finding } from "../../model/rehearsal.ts";

/** Where a finding leads: a line of the text, counted from 1, and lanes of the picture. */
export interface Jump {
  readonly line: number | null;
  readonly people: readonly string[];
}

/** The line and the people that a finding names; without people those who do the line's work. */
export function jumpOf(finding: Finding, lanes: readonly Lane[]): Jump {
  const line = finding.line > 0 ? finding.line : null;
  const known = new Set(lanes.map((lane) => lane.id));
  const named = finding.people.filter((person) => known.has(person));
  return { line, people: named.length > 0 || line === null ? named : peopleAtLine(lanes, line) };
}

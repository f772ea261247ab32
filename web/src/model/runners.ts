import { listOf, number, objectOf, orNull, text, type Decoded } from "./decode.ts";
import type { Outbox } from "./outbox.ts";

const runner = objectOf({
  id: text,
  name: text,
  out_since_s: orNull(number),
});
/** Somebody of the class and for how long they have been out; null: they are in. */
export type Runner = Decoded<typeof runner>;
export const runners = objectOf({ runners: listOf(runner) });

const run = objectOf({ id: text, p10_s: number, p50_s: number, p90_s: number });
/** How long somebody's run takes. */
export type RunLength = Decoded<typeof run>;
export const runs = objectOf({ runs: listOf(run) });

export const runnerPath = (classId: string) => `/api/classes/${encodeURIComponent(classId)}/runners`;

/** Somebody, since when they are out by the device's clock, in milliseconds (null: they are in), and what is expected. */
export interface Out {
  readonly runner: Runner;
  readonly run: RunLength | null;
  readonly since: number | null;
}

/** What the program said of the runners of a class, and when by the device's clock. */
export interface SaidOfRunners {
  readonly classId: string;
  readonly list: readonly Runner[];
  readonly lengths: readonly RunLength[];
  readonly asked: number;
}

/** Who is out, with what is still on its way. */
export function outWith({ classId, list, lengths, asked }: SaidOfRunners, outbox: Outbox): readonly Out[] {
  const since = new Map(list.map((each) => [each.id, each.out_since_s === null ? null : asked - each.out_since_s * 1000]));
  for (const letter of outbox) {
    if (letter.path !== runnerPath(classId) || letter.refused !== null) continue;
    const act = letter.body as { readonly person?: string; readonly act?: string };
    if (act.person !== undefined) since.set(act.person, act.act === "out" ? letter.at : null);
  }
  return list.map((each) => ({
    runner: each,
    run: lengths.find((length) => length.id === each.id) ?? null,
    since: since.get(each.id) ?? null,
  }));
}

/** How somebody who is out stands: on their way, due about now, or late. */
export type Due = "running" | "due" | "late";
export function dueOf(out: Out, now: number): Due {
  if (out.since === null || out.run === null) return "running";
  const seconds = (now - out.since) / 1000;
  if (seconds > out.run.p90_s + graceOf(out.run.p90_s)) return "late";
  return seconds >= out.run.p10_s ? "due" : "running";
}

/** One in ten is slower than the range without any trouble: a quarter more, at least half a minute. */
const graceOf = (p90: number): number => Math.max(30, p90 / 4);

/** The one most overdue first, then those who are out longest. */
export function sortOut(outs: readonly Out[], now: number): readonly Out[] {
  const weight: Readonly<Record<Due, number>> = { late: 0, due: 1, running: 2 };
  return outs
    .filter((each) => each.since !== null)
    .sort((a, b) => weight[dueOf(a, now)] - weight[dueOf(b, now)] || (a.since ?? 0) - (b.since ?? 0));
}

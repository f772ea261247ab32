import { listOf, number, objectOf, orNull, text, type Decoded } from "./decode.ts";
import type { Outbox } from "./outbox.ts";

const runner = objectOf({
  id: text,
  name: text,
  out_since_s: orNull(number),
  p10_s: orNull(number),
  p50_s: orNull(number),
  p90_s: orNull(number),
});
/** Somebody of the class: since when they are out (null: they are in), and how long their run takes. */
export type Runner = Decoded<typeof runner>;

export const runners = objectOf({ runners: listOf(runner) });

export const runnerPath = (classId: string) => `/api/classes/${encodeURIComponent(classId)}/runners`;

/** Somebody and since when they are out by the device's clock, in milliseconds; null: they are in. */
export interface Out {
  readonly runner: Runner;
  readonly since: number | null;
}

/** Who is out, with what is still on its way; `asked` is when the program said it, by the device's clock. */
export function outWith(list: readonly Runner[], outbox: Outbox, classId: string, asked: number): readonly Out[] {
  const since = new Map(list.map((each) => [each.id, each.out_since_s === null ? null : asked - each.out_since_s * 1000]));
  for (const letter of outbox) {
    if (letter.path !== runnerPath(classId) || letter.refused !== null) continue;
    const act = letter.body as { readonly person?: string; readonly act?: string };
    if (act.person !== undefined) since.set(act.person, act.act === "out" ? letter.at : null);
  }
  return list.map((each) => ({ runner: each, since: since.get(each.id) ?? null }));
}

/** How somebody who is out stands: on their way, due about now, or late. */
export type Due = "running" | "due" | "late";
export function dueOf(out: Out, now: number): Due {
  if (out.since === null || out.runner.p10_s === null || out.runner.p90_s === null) return "running";
  const seconds = (now - out.since) / 1000;
  if (seconds > out.runner.p90_s + graceOf(out.runner.p90_s)) return "late";
  return seconds >= out.runner.p10_s ? "due" : "running";
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

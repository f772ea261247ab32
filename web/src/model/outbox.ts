import { anything, flag, number, objectOf, orNull, text, wordOf, type Decoded } from "./decode.ts";

/** One thing that a reader entered and that the program has not yet said it keeps. */
const letter = objectOf({
  key: text,
  path: text,
  how: wordOf("POST", "PUT"),
  body: anything,
  /** What it is, for people: '22:10 of Ana'. */
  words: text,
  /** When it was entered, in milliseconds of the device's clock. */
  at: number,
  /** Until when it may still be taken back: it is not sent before. */
  held: number,
  /** Whether the program is told how long ago it was entered. */
  timed: flag,
  /** Why the program refused it; null while it waits. */
  refused: orNull(text),
});
export type Letter = Decoded<typeof letter>;

/** What is sent at that time. */
export const bodyAt = (letter: Letter, now: number): unknown =>
  letter.timed ? { ...(letter.body as object), ago_s: Math.max(0, Math.round((now - letter.at) / 1000)) } : letter.body;

/** Everything that was entered on this device and is not delivered, in the order of entry. */
export type Outbox = readonly Letter[];

/** Reads what was kept on the device; what cannot be read is left out, for there is nobody who could mend it. */
export function outboxOf(kept: readonly string[]): Outbox {
  const letters: Letter[] = [];
  for (const each of kept) {
    try {
      letters.push(letter(JSON.parse(each), ""));
    } catch {
      // Written by another version, or cut short.
    }
  }
  return letters.sort((a, b) => a.at - b.at || a.key.localeCompare(b.key));
}

/** With one more at the end. */
export const withLetter = (outbox: Outbox, added: Letter): Outbox => [...outbox, added];

/** Without the one of that key. */
export const without = (outbox: Outbox, key: string): Outbox => outbox.filter((each) => each.key !== key);

/** With the one of that key refused. */
export const withRefusal = (outbox: Outbox, key: string, why: string): Outbox =>
  outbox.map((each) => (each.key === key ? { ...each, refused: why } : each));

/** The next to send: the first that was not refused and may not be taken back any more. */
export const nextLetter = (outbox: Outbox, now: number): Letter | null =>
  outbox.find((each) => each.refused === null && timeHeld(each, now) === 0) ?? null;

/** How long one is still held; a clock of the device that was set back holds nothing. */
const timeHeld = (letter: Letter, now: number): number => (letter.at > now ? 0 : Math.max(0, letter.held - now));

/** In how many milliseconds the next one may be sent; null where none waits. */
export function timeToNext(outbox: Outbox, now: number): number | null {
  const times = waiting(outbox).map((each) => timeHeld(each, now));
  return times.length === 0 ? null : Math.min(...times);
}

export const waiting = (outbox: Outbox): Outbox => outbox.filter((each) => each.refused === null);
export const refusals = (outbox: Outbox): Outbox => outbox.filter((each) => each.refused !== null);

/**
 * What an answer means for what was sent: kept for good; to be sent again, since nobody said that it is kept; or refused,
 * since sending it again would be refused again.
 */
export type Fate = "delivered" | "again" | "refused";
export function fateOf(status: number): Fate {
  if (status >= 200 && status < 300) return "delivered";
  const passes = status === 0 || status === 401 || status === 408 || status === 429 || status >= 500;
  return passes && status !== 501 ? "again" : "refused";
}

/** How long to wait before the next try, in milliseconds, after so many that failed in a row. */
export const pauseAfter = (failures: number): number => Math.min(10_000, 500 * 2 ** Math.min(failures, 5));

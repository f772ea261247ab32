import { signal } from "@preact/signals";
import type { Client } from "../api/client.ts";
import { anything } from "../model/decode.ts";
import {
  bodyAt,
  fateOf,
  nextLetter,
  outboxOf,
  pauseAfter,
  timeToNext,
  without,
  withLetter,
  withRefusal,
  type Letter,
  type Outbox,
} from "../model/outbox.ts";

/** Where letters survive a reload: a browser's `localStorage`, or a test's stand-in. */
export interface Shelf {
  keys(): readonly string[];
  read(key: string): string | null;
  write(key: string, value: string): void;
  remove(key: string): void;
}

export interface Post {
  readonly client: Client;
  readonly shelf: Shelf;
  readonly now: () => number;
  readonly newKey: () => string;
  /** What to do when one is delivered, before it leaves the outbox; it is off the shelf by then. */
  readonly arrived?: (letter: Letter) => Promise<void>;
  /** Calls `then` after so many milliseconds; the returned function calls it off. */
  readonly later: (then: () => void, milliseconds: number) => () => void;
}

/** What is to be sent; the key is made here. */
export interface Entry {
  readonly path: string;
  readonly how: Letter["how"];
  readonly body: Readonly<Record<string, unknown>>;
  readonly words: string;
  /** For how many milliseconds it may still be taken back; 0 if not said. */
  readonly hold?: number;
  /** Whether the program is told how long ago it was entered. */
  readonly timed?: boolean;
}

/**
 * Delivers what readers enter: each entry is put on the device first, then sent, one after another in the order of entry,
 * until the program says that it is kept. The program knows an entry that comes again by its key.
 */
export class Sender {
  readonly outbox = signal<Outbox>([]);
  /** How many tries in a row the program has not answered. */
  readonly failures = signal(0);
  private busy = false;
  private sending = "";
  private owner = "";
  private callOff: (() => void) | null = null;

  constructor(private readonly post: Post) {}

  /** Takes up what that account left on this device. */
  open(account: string): void {
    this.owner = account;
    const kept = this.post.shelf
      .keys()
      .filter((key) => key.startsWith(this.prefix()))
      .map((key) => this.post.shelf.read(key) ?? "");
    this.outbox.value = outboxOf(kept);
    this.tryNow();
  }

  close(): void {
    this.owner = "";
    this.outbox.value = [];
    this.callOff?.();
    this.callOff = null;
  }

  /** Puts an entry on its way; its key. */
  send(entry: Entry): string {
    const key = this.post.newKey();
    const { path, how, words } = entry;
    const at = this.post.now();
    const letter: Letter = {
      path,
      how,
      words,
      key,
      at,
      body: { ...entry.body, key },
      held: at + (entry.hold ?? 0),
      timed: entry.timed ?? false,
      refused: null,
    };
    this.post.shelf.write(this.prefix() + key, JSON.stringify(letter));
    this.outbox.value = withLetter(this.outbox.value, letter);
    this.tryNow();
    return key;
  }

  /** Takes back what is not on its way yet, or what was refused; whether that was still possible. */
  takeBack(key: string): boolean {
    const there = key !== this.sending && this.outbox.value.some((each) => each.key === key);
    if (there) this.drop(key);
    return there;
  }

  /** Tries at once, for when the program may be back. */
  tryNow(): void {
    this.callOff?.();
    this.callOff = null;
    void this.deliver();
  }

  private prefix(): string {
    return `repwright.waiting.${this.owner}.`;
  }

  private drop(key: string): void {
    this.post.shelf.remove(this.prefix() + key);
    this.outbox.value = without(this.outbox.value, key);
  }

  private async deliver(): Promise<void> {
    if (this.busy) return;
    this.busy = true;
    const owner = this.owner;
    const next = () => (owner === this.owner ? nextLetter(this.outbox.value, this.post.now()) : null);
    let again = false;
    for (let letter = next(); letter && !again; letter = next()) again = !(await this.deliverOne(letter, owner));
    this.busy = false;
    this.sending = "";
    const wait = timeToNext(this.outbox.value, this.post.now());
    if (wait === null) return;
    this.callOff?.();
    this.callOff = this.post.later(() => void this.deliver(), again ? pauseAfter(this.failures.value) : wait);
  }

  /** Whether the program said what became of it. */
  private async deliverOne(letter: Letter, owner: string): Promise<boolean> {
    this.sending = letter.key;
    const answer = await this.post.client.ask(letter.how, letter.path, anything, bodyAt(letter, this.post.now()));
    if (owner !== this.owner) return false;
    const fate = fateOf(answer.ok ? 200 : answer.fault.status);
    this.failures.value = fate === "again" ? this.failures.value + 1 : 0;
    if (fate === "delivered") await this.delivered(letter);
    if (fate === "refused") this.refuse(letter, answer.ok ? "" : answer.fault.text);
    return fate !== "again";
  }

  private async delivered(letter: Letter): Promise<void> {
    this.post.shelf.remove(this.prefix() + letter.key);
    await this.post.arrived?.(letter);
    this.drop(letter.key);
  }

  private refuse(letter: Letter, why: string): void {
    this.post.shelf.write(this.prefix() + letter.key, JSON.stringify({ ...letter, refused: why }));
    this.outbox.value = withRefusal(this.outbox.value, letter.key, why);
  }
}

import { signal, type ReadonlySignal } from "@preact/signals";
import { clock as clockAnswer, type Clock } from "../model/clock.ts";
import type { Fault } from "../model/fault.ts";
import { TimeSync } from "../model/time_sync.ts";
import { heardChange } from "./gym.ts";
import { program } from "./program.ts";

const burst = 20;
const burstEvery = 50;
const steadyEvery = 2000;
const lookEach = 5;
const actEvery = 1000;
const actGivesUp = 110_000; // the program takes acts of the last two minutes
const key = (id: string) => `repwright.clock.${id}`;

export type Deed = "start" | "pause" | "go-on" | "add" | "jump" | "last-call" | "stop" | "undo";
/** Where a jump lands, or how much time is added. */
export interface Detail {
  readonly cue?: string;
  readonly seconds?: number;
}

/** An act that is not answered yet. */
interface Waiting {
  readonly deed: Deed;
  readonly detail: Detail;
  readonly key: string;
  readonly version: number;
  readonly at: number;
}

const newKey = (): string =>
  [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, "0")).join("");

/** Follows the clock of one class: what the program said last, and the program's time, also while it is away. */
export class ClockWatch {
  private readonly seen = signal<Clock | null>(null);
  private readonly gone = signal(false);
  private readonly wrong = signal<Fault | null>(null);
  private readonly sending = signal<Deed | null>(null);
  private readonly sync = new TimeSync();
  private remembered: number | null = null; // what the program was ahead of this device's calendar
  private probed = 0;
  private asked = 0;
  private stopped = false;
  private waiting: Waiting | null = null;
  private readonly unhear: () => void;

  constructor(private readonly id: string) {
    this.remember();
    this.unhear = heardChange((topic) => {
      if (topic === "clock" || topic === "boards" || topic === "classes") void this.look();
    });
    void this.look();
    void this.probe();
  }

  /** As it was seen last; null until it was. */
  get clock(): ReadonlySignal<Clock | null> {
    return this.seen;
  }
  /** Whether the program does not answer. */
  get away(): ReadonlySignal<boolean> {
    return this.gone;
  }
  /** Why the last act, or the clock, was refused. */
  get fault(): ReadonlySignal<Fault | null> {
    return this.wrong;
  }
  /** An act on its way. */
  get underWay(): ReadonlySignal<Deed | null> {
    return this.sending;
  }

  /** The program's time now, in milliseconds. */
  now(): number {
    const known = this.sync.at(performance.now());
    if (known) return known.time;
    return Date.now() + (this.remembered ?? 0);
  }

  /** How far off that may be; null where the program has not said since this page was opened. */
  within(): number | null {
    return this.sync.at(performance.now())?.within ?? null;
  }

  stop(): void {
    this.stopped = true;
    this.unhear();
  }

  private remember(): void {
    try {
      const kept = JSON.parse(localStorage.getItem(key(this.id)) ?? "null") as { ahead: number; clock: unknown } | null;
      if (!kept || typeof kept.ahead !== "number") return;
      this.seen.value = clockAnswer(kept.clock, "");
      this.remembered = kept.ahead;
    } catch {
      localStorage.removeItem(key(this.id)); // of another version of this page
    }
  }

  private keep(): void {
    const clock = this.seen.value;
    if (clock && this.sync.at(performance.now()))
      localStorage.setItem(key(this.id), JSON.stringify({ ahead: this.now() - Date.now(), clock }));
  }

  /** Asks for the clock; answers to older questions are dropped. */
  private async look(): Promise<void> {
    const mine = ++this.asked;
    const answer = await program.clock(this.id);
    if (mine !== this.asked || this.stopped) return;
    if (answer.ok) this.take(answer.value);
    else if (answer.fault.status !== 0) this.wrong.value = answer.fault;
  }

  private take(clock: Clock): void {
    this.seen.value = clock;
    this.keep();
  }

  /** Asks for the time again and again: often at first, then steadily. */
  private async probe(): Promise<void> {
    while (!this.stopped) {
      const asked = performance.now();
      const answer = await program.time();
      if (answer.ok) {
        this.sync.add({ asked, program: answer.value.now_ms, heard: performance.now() });
        this.probed += 1;
        if (this.probed % 10 === 0) this.keep();
      }
      // An event may be lost on the way: the clock is looked at now and then all the same.
      const back = answer.ok && (this.gone.value || this.probed % lookEach === 0);
      if (answer.ok || answer.fault.status === 0) this.gone.value = !answer.ok;
      if (back) void this.look();
      await pause(this.probed < burst ? burstEvery : steadyEvery);
    }
  }

  /** Does something to the clock, as of now; sent again until it is answered, and never done twice. */
  act(deed: Deed, detail: Detail = {}): void {
    if (this.waiting || !this.seen.value) return;
    this.wrong.value = null;
    this.waiting = { deed, detail, key: newKey(), version: this.seen.value.version, at: this.now() };
    this.sending.value = deed;
    void this.send();
  }

  private async send(): Promise<void> {
    while (this.waiting && !this.stopped) {
      const { deed, detail, key: once, version, at } = this.waiting;
      const answer = await program.clockAct(this.id, { act: deed, key: once, version, at_ms: Math.floor(at), ...detail });
      const silent = !answer.ok && answer.fault.status === 0;
      if (silent && this.now() - at < actGivesUp) {
        await pause(actEvery);
        continue;
      }
      this.waiting = null;
      this.sending.value = null;
      this.asked += 1;
      if (answer.ok) this.take(answer.value);
      else this.wrong.value = answer.fault;
      if (!answer.ok) void this.look();
    }
  }
}

const pause = (ms: number) => new Promise<void>((done) => setTimeout(done, ms));

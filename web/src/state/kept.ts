import { signal, type ReadonlySignal } from "@preact/signals";
import type { Answer } from "../api/client.ts";
import type { Topic } from "../api/events.ts";
import type { Fault } from "../model/fault.ts";

/** Something the program keeps, as it was last looked at. `value` stays while it is asked for again, or soon will be. */
export interface Looked<T> {
  readonly value: T | null;
  readonly fault: Fault | null;
  readonly asking: boolean;
}

/** Looks at one thing again whenever it changed; answers to older questions are dropped. */
export class Kept<T> {
  private readonly looked = signal<Looked<T>>({ value: null, fault: null, asking: false });
  private asked = 0;
  private wanted = false;
  private gathering = false;

  constructor(
    private readonly ask: () => Promise<Answer<T>>,
    private readonly topics: readonly Topic[],
    /** How long changes are gathered before it is asked again, in milliseconds: for answers that take a rehearsal. */
    private readonly pause = 0,
  ) {}

  get now(): ReadonlySignal<Looked<T>> {
    return this.looked;
  }

  /** Asks once, the first time that somebody wants it. */
  want(): void {
    if (this.wanted) return;
    void this.lookAgain();
  }

  async lookAgain(): Promise<void> {
    this.wanted = true;
    const mine = ++this.asked;
    this.looked.value = { ...this.looked.value, asking: true };
    const answer = await this.ask();
    if (mine !== this.asked) return;
    this.looked.value = answer.ok
      ? { value: answer.value, fault: null, asking: false }
      : { value: answer.fault.status === 0 ? this.looked.value.value : null, fault: answer.fault, asking: false };
  }

  async lookAgainIfWanted(): Promise<void> {
    if (this.wanted) await this.lookAgain();
  }

  heard(topic: Topic): void {
    if (!this.wanted || !this.topics.includes(topic) || this.gathering) return;
    if (this.pause === 0) {
      void this.lookAgain();
      return;
    }
    this.gathering = true;
    this.looked.value = { ...this.looked.value, asking: true };
    setTimeout(() => {
      this.gathering = false;
      void this.lookAgainIfWanted();
    }, this.pause);
  }

  /** Forgets what was seen: for when somebody else signs in. */
  forget(): void {
    this.asked += 1;
    this.wanted = false;
    this.looked.value = { value: null, fault: null, asking: false };
  }
}

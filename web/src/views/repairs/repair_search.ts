import { signal } from "@preact/signals";
import { latest, type Latest, type Waits } from "../../editor/latest.ts";
import type { Answer } from "../../api/client.ts";
import type { Questions, WhatIf } from "../../api/questions.ts";
import type { Repair, RepairPlan } from "../../model/repairs.ts";

/** What came of a search, and what exactly was asked: the proposals hold for nothing else. */
export interface Found {
  readonly plan: RepairPlan;
  readonly asked: WhatIf;
}

/** A proposal that was taken, and the text that it replaced. */
export interface Taken {
  readonly repair: Repair;
  readonly before: string;
}

/** Milliseconds: a search takes both cores for a second, and the rehearsal of the next switch comes first. */
const unaskedPause = 700;

/** The search for small changes of a board that help its class. One at a time; a newer one ends the older; no DOM. */
export class RepairSearch {
  readonly found = signal<Found | null>(null);
  readonly looking = signal(false);
  /** Why the last search found no answer; null if there is nothing to say. */
  readonly fault = signal<string | null>(null);
  readonly taken = signal<Taken | null>(null);
  private readonly searcher: Latest<WhatIf>;

  constructor(program: Pick<Questions, "repairs">, waits?: Waits) {
    this.searcher = latest({
      ask: (asked: WhatIf, stop) => program.repairs(asked, stop),
      answered: (answer: Answer<RepairPlan>, asked) => {
        this.looking.value = false;
        if (answer.ok) this.found.value = { plan: answer.value, asked };
        else this.fault.value = answer.fault.text;
      },
      pause: unaskedPause,
      ...(waits ? { waits } : {}),
    });
  }

  /** Looks because somebody asked to. */
  look(asked: WhatIf): void {
    this.begin();
    this.searcher.askNow(asked);
  }

  /** Looks because the class has changed, once it stays as it is for a moment. */
  lookUnasked(asked: WhatIf): void {
    this.begin();
    this.searcher.ask(asked);
  }

  /** Ends a search that is under way; what was found before stays. */
  leave(): void {
    this.searcher.stop();
    this.looking.value = false;
  }

  private begin(): void {
    this.looking.value = true;
    this.fault.value = null;
  }

  /** Forgets everything: for another board. */
  forget(): void {
    this.leave();
    this.found.value = null;
    this.fault.value = null;
    this.taken.value = null;
  }
}

/** Whether two questions are about the same board under the same circumstances. */
export const isSameQuestion = (a: WhatIf, b: WhatIf): boolean => JSON.stringify(a) === JSON.stringify(b);

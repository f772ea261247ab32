import { signal } from "@preact/signals";
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

/** The search for small changes of a board that help its class. One at a time; a newer one ends the older; no DOM. */
export class RepairSearch {
  readonly found = signal<Found | null>(null);
  readonly looking = signal(false);
  /** Why the last search found no answer; null if there is nothing to say. */
  readonly fault = signal<string | null>(null);
  readonly taken = signal<Taken | null>(null);
  private asking: AbortController | null = null;

  constructor(private readonly program: Pick<Questions, "repairs">) {}

  async look(asked: WhatIf): Promise<void> {
    this.leave();
    const mine = new AbortController();
    this.asking = mine;
    this.looking.value = true;
    this.fault.value = null;
    const answer = await this.program.repairs(asked, mine.signal);
    if (this.asking !== mine) return;
    this.leave();
    if (answer.ok) this.found.value = { plan: answer.value, asked };
    else this.fault.value = answer.fault.text;
  }

  /** Ends a search that is under way; what was found before stays. */
  leave(): void {
    this.asking?.abort();
    this.asking = null;
    this.looking.value = false;
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

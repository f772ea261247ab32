import { signal } from "@preact/signals";
import { latest, type Latest, type Waits } from "../../editor/latest.ts";
import type { Answer } from "../../api/client.ts";
import type { WhatIf } from "../../api/questions.ts";

/** What came of a search, and what exactly was asked: the proposals hold for nothing else. */
export interface Found<Plan> {
  readonly plan: Plan;
  readonly asked: WhatIf;
}

/** Milliseconds: a search takes both cores for a second, and the rehearsal of the next switch comes first. */
const unaskedPause = 700;

/** The search for advice on a board and its class. One at a time; a newer one ends the older; no DOM. */
export class AdviceSearch<Plan> {
  readonly found = signal<Found<Plan> | null>(null);
  readonly looking = signal(false);
  /** Why the last search found no answer; null if there is nothing to say. */
  readonly fault = signal<string | null>(null);
  private readonly searcher: Latest<WhatIf>;

  constructor(ask: (asked: WhatIf, stop?: AbortSignal) => Promise<Answer<Plan>>, waits?: Waits) {
    this.searcher = latest({
      ask,
      answered: (answer: Answer<Plan>, asked) => {
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

  /** Forgets everything: for another board. */
  forget(): void {
    this.leave();
    this.found.value = null;
    this.fault.value = null;
  }

  private begin(): void {
    this.looking.value = true;
    this.fault.value = null;
  }
}

/** Whether two questions are about the same board under the same circumstances. */
export const isSameQuestion = (a: WhatIf, b: WhatIf): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Whether what was found is about another board or class than stands there now; null while there is no question. */
export const isStale = (found: Found<unknown> | null, now: WhatIf | null): boolean =>
  found !== null && (now === null || !isSameQuestion(found.asked, now));

import { signal } from "@preact/signals";
import type { Waits } from "../../editor/latest.ts";
import type { Questions } from "../../api/questions.ts";
import type { Change, RepairPlan } from "../../model/repairs.ts";
import { AdviceSearch } from "../advice/advice_search.ts";

/** A proposal that was taken, and the text that it replaced. */
export interface Taken {
  readonly repair: Change;
  readonly before: string;
}

/** The search for small changes of a board that help its class, and the one that was taken. */
export class RepairSearch extends AdviceSearch<RepairPlan> {
  readonly taken = signal<Taken | null>(null);

  constructor(program: Pick<Questions, "repairs">, waits?: Waits) {
    super((asked, stop) => program.repairs(asked, stop), waits);
  }

  override forget(): void {
    super.forget();
    this.taken.value = null;
  }
}

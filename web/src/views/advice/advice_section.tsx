import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import type { WhatIf } from "../../api/questions.ts";
import { Said } from "../../ui/said.tsx";
import { sentence } from "../../ui/words.ts";
import { AdviceHead } from "./advice_head.tsx";
import { isStale, type AdviceSearch } from "./advice_search.ts";

interface AdviceSectionProps<Plan> {
  readonly name: string;
  readonly doing: string;
  readonly act: string;
  readonly search: AdviceSearch<Plan>;
  readonly now: WhatIf | null;
  /** Whether what was found is one act away at first. */
  readonly folded?: boolean;
  readonly show: (plan: Plan) => ComponentChildren;
}

/** Advice that is only read: asked for by one act, and marked once it is about another board or class. */
export function AdviceSection<Plan>({ name, doing, act, search, now, folded, show }: AdviceSectionProps<Plan>) {
  const id = useId();
  const found = search.found.value;
  const stale = isStale(found, now);
  return (
    <section class="help stack" aria-labelledby={id} aria-busy={search.looking.value}>
      <AdviceHead id={id} name={name} doing={doing} act={act} search={search} now={now} />
      {search.fault.value !== null && (
        <Said weight="problem" alert>
          {sentence(search.fault.value)}
        </Said>
      )}
      {found && stale && (
        <Said weight="note">This was worked out for the board and the class as they were. Look again before you use it.</Said>
      )}
      {found && (
        <details open={!folded} class="advice-fold">
          <summary>{stale ? "As it was" : "As the board stands"}</summary>
          <div class={stale ? "advice stack stale-advice" : "advice stack"}>{show(found.plan)}</div>
        </details>
      )}
    </section>
  );
}

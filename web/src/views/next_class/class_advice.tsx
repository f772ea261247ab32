import { useEffect, useMemo } from "preact/hooks";
import type { WhatIf } from "../../api/questions.ts";
import type { HourPlan } from "../../model/hour_plan.ts";
import type { Rehearsal } from "../../model/rehearsal.ts";
import type { WarmUpPlan } from "../../model/warm_up.ts";
import { program } from "../../state/program.ts";
import { AdviceSearch } from "../advice/advice_search.ts";
import { AdviceSection } from "../advice/advice_section.tsx";
import { HourPlanView } from "../advice/hour_plan.tsx";
import { WarmUp } from "../advice/warm_up.tsx";

/** The searches for advice on the hour of a class, and what they ask now; null until the board is known. */
export interface ClassAdvice {
  readonly now: WhatIf | null;
  readonly warmUp: AdviceSearch<WarmUpPlan>;
  readonly hourPlan: AdviceSearch<HourPlan>;
}

/** Looks for a warm-up whenever the class was rehearsed anew; what to cut waits to be asked. */
export function useClassAdvice(classId: string, text: string | null, rehearsal: Rehearsal | null): ClassAdvice {
  const warmUp = useMemo(() => new AdviceSearch(program.warmUp), [classId]);
  const hourPlan = useMemo(() => new AdviceSearch(program.hourPlan), [classId]);
  const now = useMemo(() => (text === null ? null : { text, class: classId }), [text, classId]);
  useEffect(() => {
    if (now !== null && rehearsal !== null) warmUp.lookUnasked(now);
    return () => {
      warmUp.leave();
      hourPlan.leave();
    };
  }, [warmUp, hourPlan, now, rehearsal]);
  return { now, warmUp, hourPlan };
}

/** The warm-up of a class, drill by drill; folded where there is little room. */
export function ClassWarmUp({ advice, folded }: { readonly advice: ClassAdvice; readonly folded: boolean }) {
  return (
    <div class="sheet no-print">
      <AdviceSection
        name="The warm-up"
        doing="Choosing drills"
        act="Choose a warm-up"
        search={advice.warmUp}
        now={advice.now}
        folded={folded}
        show={(plan) => <WarmUp plan={plan} />}
      />
    </div>
  );
}

/** What to cut when the hour gets short. */
export function ClassCuts({ advice }: { readonly advice: ClassAdvice }) {
  return (
    <div class="sheet no-print">
      <AdviceSection
        name="What to cut, and the kit"
        doing="Trying what each cut gives"
        act="Look what to cut first"
        search={advice.hourPlan}
        now={advice.now}
        show={(plan) => <HourPlanView plan={plan} />}
      />
    </div>
  );
}

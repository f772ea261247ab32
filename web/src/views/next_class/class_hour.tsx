import { useEffect, useMemo } from "preact/hooks";
import type { WhatIf } from "../../api/questions.ts";
import type { Rehearsal } from "../../model/rehearsal.ts";
import { boardOf } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { AdviceSearch } from "../advice/advice_search.ts";
import { AdviceSection } from "../advice/advice_section.tsx";
import { drillStretches } from "../advice/advice_words.ts";
import { HourPlanView } from "../advice/hour_plan.tsx";
import { WarmUp } from "../advice/warm_up.tsx";
import { Hour } from "./hour.tsx";

interface ClassHourProps {
  readonly boardId: string;
  readonly classId: string;
  readonly rehearsal: Rehearsal;
  readonly start: string | null;
}

function OfBoard({ now, rehearsal, start }: Pick<ClassHourProps, "rehearsal" | "start"> & { readonly now: WhatIf }) {
  const warmUp = useMemo(() => new AdviceSearch(program.warmUp), [now.class]);
  const hourPlan = useMemo(() => new AdviceSearch(program.hourPlan), [now.class]);
  useEffect(() => {
    warmUp.lookUnasked(now); // takes no longer than a look; what to cut takes a second and waits to be asked
    return () => {
      warmUp.leave();
      hourPlan.leave();
    };
  }, [warmUp, hourPlan, rehearsal]);
  const found = warmUp.found.value;
  return (
    <>
      <Hour
        timetable={rehearsal.timetable}
        start={start}
        drills={found ? drillStretches(found.plan.together.drills, rehearsal.timetable.boxes) : []}
      />
      <div class="sheet no-print">
        <AdviceSection
          name="The warm-up"
          doing="Choosing drills"
          act="Choose a warm-up"
          search={warmUp}
          now={now}
          show={(plan) => <WarmUp plan={plan} />}
        />
      </div>
      <div class="sheet no-print">
        <AdviceSection
          name="What to cut, and the kit"
          doing="Trying what each cut gives"
          act="Look what to cut first"
          search={hourPlan}
          now={now}
          show={(plan) => <HourPlanView plan={plan} />}
        />
      </div>
    </>
  );
}

/** The hour of a class with its warm-up, drill by drill, and what to cut when it gets short. */
export function ClassHour({ boardId, classId, rehearsal, start }: ClassHourProps) {
  return (
    <LookedAt
      at={boardOf(boardId)}
      show={(board) => <OfBoard now={{ text: board.text, class: classId }} rehearsal={rehearsal} start={start} />}
    />
  );
}

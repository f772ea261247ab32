import { useEffect, useMemo, useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import type { KeptBoard } from "../../model/gym.ts";
import type { HourPlan } from "../../model/hour_plan.ts";
import type { Rehearsal } from "../../model/rehearsal.ts";
import { keepText } from "../../state/board.ts";
import { boardOf } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Said } from "../../ui/said.tsx";
import { sentence } from "../../ui/words.ts";
import type { AdviceSearch } from "../advice/advice_search.ts";
import { RepairSearch } from "../repairs/repair_search.ts";
import { Repairs } from "../repairs/repairs.tsx";

interface OfBoardProps {
  readonly board: KeptBoard;
  readonly classId: string;
  readonly rehearsal: Rehearsal;
  readonly cuts: AdviceSearch<HourPlan>;
}

function OfBoard({ board, classId, rehearsal, cuts }: OfBoardProps) {
  const search = useMemo(() => new RepairSearch(program), [classId]);
  const [fault, setFault] = useState<Fault | null>(null);
  const now = { text: board.text, class: classId };
  const worthIt = rehearsal.findings.some((each) => each.severity !== "note");
  useEffect(() => {
    // Who comes or what is broken has changed: what was proposed for others is of no use here, where nobody writes.
    if (worthIt && search.taken.value === null) search.lookUnasked(now);
    return () => {
      search.leave();
    };
  }, [search, rehearsal]);
  const taken = search.taken.value;
  const keep = async (text: string): Promise<boolean> => {
    const failed = await keepText(board, text);
    setFault(failed);
    return failed === null;
  };
  return (
    <>
      {fault && (
        <Said weight="problem" alert>
          The board was not changed. {sentence(fault.text)}
        </Said>
      )}
      <Repairs
        search={search}
        now={now}
        cuts={cuts}
        take={(repair) => {
          void keep(repair.text).then((kept) => {
            if (kept) search.taken.value = { repair, before: board.text };
          });
        }}
        undo={
          taken === null || taken.repair.text !== board.text
            ? null
            : () => {
                void keep(taken.before).then((kept) => {
                  if (kept) search.taken.value = null;
                });
              }
        }
      />
    </>
  );
}

/** What would help this class: a proposal that is taken is written into the kept board. */
export function ClassRepairs(props: Omit<OfBoardProps, "board"> & { readonly boardId: string }) {
  return (
    <div class="sheet no-print">
      <LookedAt
        at={boardOf(props.boardId)}
        show={(board) => <OfBoard {...props} board={board} />}
      />
    </div>
  );
}

import { isCoach, type Me } from "../../model/account.ts";
import type { GymClass } from "../../model/gym.ts";
import { boardOf, briefOf, readingOf, rehearsalOf } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { useNarrow } from "../../ui/use_narrow.ts";
import { isOld, MayBeOld, Working } from "../../ui/working.tsx";
import { drillStretches } from "../advice/advice_words.ts";
import { LastTime } from "../last_time/last_time.tsx";
import { ClassNotes } from "../notes/class_notes.tsx";
import { ClassCuts, ClassWarmUp, useClassAdvice } from "./class_advice.tsx";
import { ClassRepairs } from "./class_repairs.tsx";
import { Hour } from "./hour.tsx";
import { Matters } from "./matters.tsx";
import { SetOutList } from "./set_out_list.tsx";
import { WhoComes } from "./who_comes.tsx";

function BoardAndReading({ id }: { readonly id: string }) {
  return (
    <div class="two">
      <LookedAt at={boardOf(id)} show={(board) => <pre class="chalk">{board.text}</pre>} />
      <LookedAt
        at={readingOf(id)}
        show={(reading) => (
          <ol class="plain sentences">
            {reading.reading.map((sentence, index) => (
              <li key={index}>{sentence}</li>
            ))}
          </ol>
        )}
      />
    </div>
  );
}

/** What is chalked and what was understood; folded where there is little room. */
function BoardReadBack({ id, folded }: { readonly id: string; readonly folded: boolean }) {
  return (
    <section class="sheet read-back" aria-labelledby="read-back">
      {folded ? (
        <details class="advice-fold">
          <summary>
            <h2 id="read-back">The board, read back</h2>
          </summary>
          <BoardAndReading id={id} />
        </details>
      ) : (
        <>
          <h2 id="read-back">The board, read back</h2>
          <BoardAndReading id={id} />
        </>
      )}
    </section>
  );
}

/** What is told of a class with a board: two columns, or in the order of need where there is room for one. */
export function ClassBody({ gymClass, who }: { readonly gymClass: GymClass; readonly who: Me }) {
  const { id, board_id } = gymClass;
  const edits = isCoach(who);
  const oneColumn = useNarrow("62rem");
  const rehearsal = rehearsalOf(id).now.value.value;
  const brief = briefOf(id).now.value.value;
  const text = boardOf(board_id).now.value.value?.text ?? null;
  const advice = useClassAdvice(id, text, rehearsal);
  const plan = advice.warmUp.found.value?.plan;
  const old = [rehearsalOf(id), briefOf(id), boardOf(board_id), readingOf(board_id)].some(isOld);

  const matters = (
    <LookedAt
      at={rehearsalOf(id)}
      show={(seen) => <Matters rehearsal={seen} board={who.role === "relief" ? null : board_id} />}
    />
  );
  const repairs = rehearsal && edits ? <ClassRepairs boardId={board_id} classId={id} rehearsal={rehearsal} cuts={advice.hourPlan} /> : null;
  const hour = rehearsal && (
    <Hour
      timetable={rehearsal.timetable}
      start={gymClass.start}
      drills={plan ? drillStretches(plan.together.drills, rehearsal.timetable.boxes) : []}
    />
  );
  const people = (
    <LookedAt at={briefOf(id)} show={(told) => <WhoComes brief={told} day={gymClass.date} links={who.role !== "relief"} />} />
  );
  const notes = brief && <ClassNotes brief={brief} mayEdit={edits} />;
  const setOut = brief && <SetOutList brief={brief} rehearsal={rehearsal} faults={gymClass.faults} />;
  const readBack = <BoardReadBack id={board_id} folded={oneColumn} />;
  const warmUp = rehearsal && <ClassWarmUp advice={advice} folded={oneColumn} />;
  const cuts = rehearsal && <ClassCuts advice={advice} />;
  const last = edits ? <LastTime boardId={board_id} /> : null;
  return (
    <>
      {old ? <Working words="Rehearsing again. Until that is done, what stands here is as it was before the change." /> : null}
      <MayBeOld old={old}>
        {oneColumn ? (
          <div class="stack">
            {matters} {people} {notes} {setOut} {hour} {repairs} {cuts} {readBack} {warmUp} {last}
          </div>
        ) : (
          <div class="columns">
            <div class="stack">
              {matters} {repairs} {hour} {cuts} {warmUp}
            </div>
            <div class="stack">
              {people} {notes} {setOut} {last} {readBack}
            </div>
          </div>
        )}
      </MayBeOld>
    </>
  );
}

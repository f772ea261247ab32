import { useMemo, useState } from "preact/hooks";
import { axisOf } from "../../charts/axis.ts";
import { ClassBar } from "../../charts/class_bar.tsx";
import { kinds } from "../../charts/kinds.ts";
import { LaneList } from "../../charts/lane_list.tsx";
import { kindsIn, type Lane } from "../../charts/lanes.ts";
import { Legend } from "../../charts/legend.tsx";
import { PeopleTable } from "../../charts/people_table.tsx";
import { PersonPanel } from "../../charts/person_panel.tsx";
import { Queues } from "../../charts/queues.tsx";
import { Textures } from "../../charts/textures.tsx";
import { useWidth } from "../../charts/use_width.ts";
import { personSentence, rangeText, slackText } from "../../charts/words.ts";
import type { Movement } from "../../model/gym.ts";
import type { Finding, Rehearsal } from "../../model/rehearsal.ts";
import { Findings } from "./findings.tsx";
import { jumpOf } from "./jumps.ts";

interface RehearsalSideProps {
  readonly rehearsal: Rehearsal;
  readonly lanes: readonly Lane[];
  readonly movements: readonly Movement[];
  /** Shows a line of the text. */
  readonly showLine: (line: number) => void;
}

/** What stands beside the lanes: the names on the left, the ranges on the right; narrow pages have no ranges. */
function sidesOf(width: number): { readonly name: number; readonly range: number } {
  if (width < 520) return { name: 92, range: 0 };
  return width < 760 ? { name: 128, range: 96 } : { name: 168, range: 112 };
}

function rangesOf(rehearsal: Rehearsal): ReadonlyMap<string, string> {
  return new Map(
    rehearsal.people.map((person) => [
      person.id,
      person.pieces.map((piece) => rangeText(piece)).join(" · "),
    ]),
  );
}

/** The rehearsal: the hour, what to mind, one lane per person, the queues; or the same in a table. */
export function RehearsalSide({ rehearsal, lanes, movements, showLine }: RehearsalSideProps) {
  const [box, width] = useWidth<HTMLDivElement>();
  const [chosen, setChosen] = useState<string | null>(null);
  const [finding, setFinding] = useState<Finding | null>(null);
  const [asTable, setAsTable] = useState(false);
  const { timetable } = rehearsal;
  const sides = sidesOf(width);
  const axis = useMemo(
    () => axisOf(Math.max(timetable.planned_s ?? 0, timetable.p90_s), Math.max(120, width - sides.name - sides.range)),
    [timetable, width, sides.name, sides.range],
  );
  const byId = useMemo(() => new Map(movements.map((each) => [each.id, each])), [movements]);
  const sentences = useMemo(
    () => new Map(rehearsal.people.map((person) => [person.id, personSentence(rehearsal, person.id)])),
    [rehearsal],
  );
  const ranges = useMemo(() => rangesOf(rehearsal), [rehearsal]);
  const lit = useMemo(() => new Set(finding ? jumpOf(finding, lanes).people : []), [finding, lanes]);
  const show = (found: Finding): void => {
    const jump = jumpOf(found, lanes);
    setFinding(found === finding ? null : found);
    if (found === finding) return;
    if (jump.line !== null) showLine(jump.line);
    if (jump.people[0] !== undefined) setChosen(jump.people[0]);
  };
  return (
    <div class="rehearsal" style={{ "--names": `${sides.name}px`, "--ranges": `${sides.range}px` }}>
      <Textures kinds={kinds} />
      <p class="slack">{slackText(timetable)}</p>
      <Findings findings={rehearsal.findings} chosen={finding} show={show} />
      <div class="picture-head">
        <Legend present={kindsIn(lanes)} />
        <button
          type="button"
          aria-pressed={asTable}
          onClick={() => {
            setAsTable(!asTable);
          }}
        >
          {asTable ? "As lanes" : "As a table"}
        </button>
      </div>
      <div class="picture" ref={box}>
        {width > 0 && !asTable && (
          <>
            <div class="lane lane-head">
              <span class="lane-name">{rehearsal.people.length} people</span>
              <ClassBar timetable={timetable} axis={axis} />
              <span class="lane-range">{sides.range > 0 && "4 of 5 runs"}</span>
            </div>
            <LaneList
              lanes={lanes}
              axis={axis}
              sentences={sentences}
              ranges={sides.range > 0 ? ranges : new Map()}
              chosen={chosen}
              lit={lit}
              choose={(id, line) => {
                setChosen(id);
                if (line !== null) showLine(line);
              }}
            />
            <Queues places={rehearsal.places} axis={axis} />
          </>
        )}
        {asTable && <PeopleTable rehearsal={rehearsal} />}
      </div>
      {chosen !== null && !asTable && (
        <PersonPanel rehearsal={rehearsal} person={chosen} movements={byId} show={showLine} />
      )}
      {rehearsal.notes.length > 0 && (
        <ul class="notes">
          {rehearsal.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

import type { ComponentChildren } from "preact";
import { memo } from "preact/compat";
import { useMemo, useRef, useState } from "preact/hooks";
import { axisOf } from "../../charts/axis.ts";
import { ClassBar, type Stretch } from "../../charts/class_bar.tsx";
import { kinds } from "../../charts/kinds.ts";
import { LaneList } from "../../charts/lane_list.tsx";
import { kindsIn, stretchOfPiece, type Lane } from "../../charts/lanes.ts";
import { Legend } from "../../charts/legend.tsx";
import { PeopleTable } from "../../charts/people_table.tsx";
import { Queues } from "../../charts/queues.tsx";
import { Textures } from "../../charts/textures.tsx";
import { useWidth } from "../../charts/use_width.ts";
import { personSentence, rangeText, slackText } from "../../charts/words.ts";
import type { Finding, Rehearsal } from "../../model/rehearsal.ts";
import { Findings } from "./findings.tsx";
import { jumpOf } from "./jumps.ts";

interface RehearsalSideProps {
  readonly rehearsal: Rehearsal;
  readonly lanes: readonly Lane[];
  /** Whose numbers are shown. */
  readonly chosen: string | null;
  readonly choose: (person: string) => void;
  /** Shows a line of the text. */
  readonly showLine: (line: number) => void;
  /** The drills of the warm-up, where one was chosen. */
  readonly drills: readonly Stretch[];
  /** What may be done about the findings. */
  readonly children?: ComponentChildren;
}

/** What stands beside the lanes: the names on the left, the ranges on the right; narrow pages have no ranges. */
function sidesOf(width: number): { readonly name: number; readonly range: number } {
  if (width < 520) return { name: 92, range: 0 };
  return width < 760 ? { name: 128, range: 104 } : { name: 168, range: 120 };
}

/** Everybody's range in one piece. */
function rangesOf(rehearsal: Rehearsal, index: number): ReadonlyMap<string, string> {
  const ranges = new Map<string, string>();
  for (const person of rehearsal.people) {
    const piece = person.pieces.find((each) => each.piece === index);
    if (piece) ranges.set(person.id, rangeText(piece));
  }
  return ranges;
}

/** The piece whose scores stand beside the lanes at first: the first that is no lift. */
function firstScored(rehearsal: Rehearsal): number {
  const pieces = rehearsal.people[0]?.pieces ?? [];
  return (pieces.find((piece) => piece.measure !== "kg") ?? pieces[0])?.piece ?? 0;
}

interface ScoresOfProps {
  readonly rehearsal: Rehearsal;
  readonly piece: number;
  readonly choose: (piece: number) => void;
  /** Only this piece's time is drawn. */
  readonly close: boolean;
  readonly draw: (close: boolean) => void;
}

/** Which piece's scores stand beside the lanes, and whether the lanes show the class or this piece alone. */
function ScoresOf({ rehearsal, piece, choose, close, draw }: ScoresOfProps) {
  return (
    <>
      {rehearsal.pieces.length > 1 && (
        <label class="scores-of">
          Piece
          <select
            value={String(piece)}
            onChange={(event) => {
              choose(Number(event.currentTarget.value));
            }}
          >
            {rehearsal.pieces.map((name, index) => (
              <option key={index} value={String(index)}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      <button
        type="button"
        aria-pressed={close}
        onClick={() => {
          draw(!close);
        }}
      >
        {close ? "The whole class" : "This piece alone"}
      </button>
    </>
  );
}

/**
 * The rehearsal: the hour, what to mind, one lane per person, the queues; or the same in a table; then what may be done. Drawn anew only for
 * another rehearsal or choice, not for every key that is pressed in the text.
 */
export const RehearsalSide = memo(function RehearsalSide(props: RehearsalSideProps) {
  const { rehearsal, lanes, chosen, choose, showLine, drills, children } = props;
  const [box, width] = useWidth<HTMLDivElement>();
  const help = useRef<HTMLElement>(null);
  const [finding, setFinding] = useState<Finding | null>(null);
  const [asTable, setAsTable] = useState(false);
  const [close, setClose] = useState(false);
  const [pieceChosen, setPieceChosen] = useState<number | null>(null);
  const { timetable } = rehearsal;
  const sides = sidesOf(width);
  const piece = pieceChosen !== null && pieceChosen < rehearsal.pieces.length ? pieceChosen : firstScored(rehearsal);
  const axis = useMemo(() => {
    const whole = { from: 0, to: Math.max(timetable.planned_s ?? 0, timetable.p90_s) };
    const drawn = (close ? stretchOfPiece(timetable, piece) : null) ?? whole;
    return axisOf(drawn, Math.max(120, width - sides.name - sides.range));
  }, [timetable, close, piece, width, sides.name, sides.range]);
  const sentences = useMemo(
    () => new Map(rehearsal.people.map((person) => [person.id, personSentence(rehearsal, person.id)])),
    [rehearsal],
  );
  const ranges = useMemo(() => rangesOf(rehearsal, piece), [rehearsal, piece]);
  const lit = useMemo(() => new Set(finding ? jumpOf(finding, lanes).people : []), [finding, lanes]);
  const show = (found: Finding): void => {
    const jump = jumpOf(found, lanes);
    setFinding(found === finding ? null : found);
    if (found === finding) return;
    if (jump.line !== null) showLine(jump.line);
    if (jump.people[0] !== undefined) choose(jump.people[0]);
  };
  return (
    <div class="rehearsal" style={{ "--names": `${sides.name}px`, "--ranges": `${sides.range}px` }}>
      <Textures kinds={kinds} />
      <div class="slack-row">
        <p class="slack">{slackText(timetable)}</p>
        {children && (
          <button
            type="button"
            class="line-link small"
            onClick={() => {
              help.current?.scrollIntoView();
              help.current?.focus({ preventScroll: true });
            }}
          >
            What may be done: below the lanes
          </button>
        )}
      </div>
      <Findings findings={rehearsal.findings} chosen={finding} show={show} />
      <div class="picture-head">
        {!asTable && (
          <p class="readout">
            {(chosen !== null && sentences.get(chosen)) || "Point at a lane, or go to it with Tab and the arrows."}
          </p>
        )}
        {!asTable && (
          <ScoresOf rehearsal={rehearsal} piece={piece} choose={setPieceChosen} close={close} draw={setClose} />
        )}
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
              <ClassBar timetable={timetable} axis={axis} drills={drills} />
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
                choose(id);
                if (line !== null) showLine(line);
              }}
            />
            <Queues places={rehearsal.places} axis={axis} />
          </>
        )}
        {asTable && <PeopleTable rehearsal={rehearsal} />}
      </div>
      {!asTable && <Legend present={kindsIn(lanes)} />}
      {children && (
        <section ref={help} tabIndex={-1} class="help-below" aria-label="What may be done">
          {children}
        </section>
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
});

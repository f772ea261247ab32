import { useState } from "preact/hooks";
import type { Me } from "../../model/account.ts";
import type { Fault } from "../../model/fault.ts";
import { pieceOfClock } from "../../model/finish.ts";
import {
  finishText,
  isForecast,
  isPastCap,
  openTaps,
  rangeText,
  scorePath,
  shownScores,
  type FormPerson,
  type FormPiece,
  type ScoreLine,
  type ShownScore,
} from "../../model/scores.ts";
import { classScoresOf, scoreFormOf } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { sendNote } from "../../state/said.ts";
import { sender } from "../../state/sender.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { useNow } from "../../ui/use_now.ts";
import { listWords } from "../../ui/words.ts";
import { FloorHead } from "../floor/floor_head.tsx";
import { ScoreEntry, type Entered } from "./score_entry.tsx";
import { StartBar, useStart } from "./start_bar.tsx";
import { startOf, useClassMoment } from "./use_class_clock.ts";

const undoFor = 10_000;

function namesOf(piece: FormPiece, ids: readonly string[]): readonly string[] {
  return ids.map((id) => piece.people.find((each) => each.id === id)?.name ?? id);
}

/** Puts a score on its way, for everybody whose score it is. */
function send(classId: string, piece: FormPiece, person: FormPerson, entered: Entered, hold: number): void {
  for (const id of [person.id, ...person.with]) {
    const one = piece.people.find((each) => each.id === id) ?? person;
    sender.send({
      path: scorePath(classId),
      how: "POST",
      body: {
        person: id,
        piece: piece.piece,
        score: entered.score,
        done_as: id === person.id ? entered.doneAs : one.done_as,
        ...(entered.effort === null || id !== person.id ? {} : { effort: entered.effort }),
      },
      words: `${entered.score} of ${one.name}`,
      hold,
    });
  }
}

async function correct(line: ScoreLine, entered: Entered): Promise<Fault | null> {
  const answer = await program.keepScore(line.number, {
    version: line.version,
    person: line.person,
    piece: line.piece,
    score: entered.score,
    done_as: entered.doneAs,
    flag: line.flag,
    ...(entered.effort === null ? {} : { effort: entered.effort }),
  });
  return answer.ok ? null : answer.fault;
}

function Name(props: {
  readonly piece: FormPiece;
  readonly person: FormPerson;
  readonly shown: ShownScore | null;
  readonly tap: () => void;
}) {
  const { piece, person, shown } = props;
  const forecast = isForecast(person.forecast) ? `forecast ${rangeText(piece.form, person.forecast)}` : "no forecast";
  const told = shown === null ? forecast : person.said_as;
  return (
    <li>
      <button type="button" class={shown === null ? "" : "done"} onClick={props.tap}>
        <strong>{person.name}</strong>
        {shown === null ? null : (
          <span>
            <span class="mark">{shown.score}</span>
            {shown.kept?.version !== undefined && shown.kept.version > 1 ? <span class="small"> corrected</span> : null}
            {shown.kept === null ? <span class="small"> on its way</span> : null}
          </span>
        )}
        <span class="small">{told}</span>
      </button>
    </li>
  );
}

/** What may still be taken back: the last taps, for ten seconds; of a pair both scores at once. */
function Undo({ shown, piece, now }: { readonly shown: readonly ShownScore[]; readonly piece: FormPiece; readonly now: number }) {
  return (
    <div class="undo" role="status">
      {openTaps(shown, piece.people, now).map((tap) => (
        <div key={tap.keys.join()}>
          <span>
            {listWords(namesOf(piece, tap.people))}: {tap.score}
          </span>
          <button
            type="button"
            onClick={() => {
              for (const key of tap.keys) sender.takeBack(key);
            }}
          >
            Undo ({Math.ceil(Math.min(undoFor, tap.held - now) / 1000)})
          </button>
        </div>
      ))}
    </div>
  );
}

function Sheet(props: {
  readonly classId: string;
  readonly piece: FormPiece;
  readonly lines: readonly ScoreLine[];
  readonly who: Me;
  /** When the piece began by the clock of the class; null while that does not run in it. */
  readonly ofClass: number | null;
  /** Told when somebody's score is being entered, and when not any more. */
  readonly entering: (on: boolean) => void;
}) {
  const { classId, piece, ofClass } = props;
  const [own, setOwn] = useStart(`${classId}.${piece.piece}`);
  const start = ofClass ?? own;
  const [open, setOpenTo] = useState<FormPerson | null>(null);
  const [stopped, setStopped] = useState(false);
  const setOpen = (person: FormPerson | null, atCap = false) => {
    props.entering(person !== null);
    setStopped(atCap);
    setOpenTo(person);
  };
  const now = useNow();
  const shown = shownScores(props.lines, sender.outbox.value, classId, piece.piece);
  const timed = piece.form === "time" && piece.parts === 1;
  const tap = (person: FormPerson) => {
    const running = timed && start !== null && !shown.has(person.id);
    if (running && isPastCap(piece, Date.now() - start)) setOpen(person, true);
    else if (running) {
      const score = finishText(Date.now() - start);
      send(classId, piece, person, { score, doneAs: person.done_as, effort: null, note: "" }, undoFor);
    } else if (shown.get(person.id)?.key === undefined || shown.get(person.id)?.key === null) setOpen(person);
  };
  const keep = async (person: FormPerson, entered: Entered): Promise<Fault | null> => {
    const kept = [person.id, ...person.with].flatMap((id) => shown.get(id)?.kept ?? []);
    for (const line of kept) {
      const own = line.person === person.id;
      const fault = await correct(line, own ? entered : { ...entered, doneAs: line.done_as, effort: line.effort });
      if (fault) return fault;
    }
    if (kept.length === 0) send(classId, piece, person, entered, 0);
    sendNote(person.id, entered.note, `note on ${person.name}`);
    return null;
  };
  const byPlace = [...piece.people].sort((a, b) => a.name.localeCompare(b.name));
  return (
    <>
      {timed ? <StartBar start={start} byClass={ofClass !== null} now={now} change={setOwn} /> : null}
      <p role="status" class="soft">
        {shown.size} of {piece.people.length} have a score.
      </p>
      <ul class="plain names">
        {byPlace.map((person) => (
          <Name
            key={person.id}
            piece={piece}
            person={person}
            shown={shown.get(person.id) ?? null}
            tap={() => {
              tap(person);
            }}
          />
        ))}
      </ul>
      <Undo shown={[...shown.values()]} piece={piece} now={now} />
      {open ? (
        <ScoreEntry
          key={open.id}
          piece={piece}
          person={open}
          kept={shown.get(open.id)?.kept ?? null}
          stopped={stopped}
          partners={namesOf(piece, open.with)}
          mayNote={props.who.role === "owner" || props.who.role === "coach"}
          keep={(entered) => keep(open, entered)}
          close={() => {
            setOpen(null);
          }}
        />
      ) : null}
    </>
  );
}

/** The pieces of a class: the one that its clock is in or was in last stands open until another one is chosen. */
function Pieces({ id, pieces, who }: { readonly id: string; readonly pieces: readonly FormPiece[]; readonly who: Me }) {
  const [chosen, setAt] = useState<number | null>(null);
  const [entering, setEntering] = useState<number | null>(null);
  const now = useClassMoment(id);
  const running = now === null ? 0 : pieceOfClock(now.clock, now.moment, pieces);
  const at = entering ?? chosen ?? running;
  const piece = pieces[Math.min(at, pieces.length - 1)];
  if (!piece) return <p>The board of this class has nothing to score.</p>;
  return (
    <>
      {pieces.length > 1 ? (
        <div class="pieces" role="group" aria-label="Piece">
          {pieces.map((each, index) => (
            <button
              key={each.piece}
              type="button"
              aria-pressed={index === at}
              onClick={() => {
                setAt(index);
              }}
            >
              {each.title}
            </button>
          ))}
        </div>
      ) : null}
      <p class="soft">{piece.scheme}</p>
      <LookedAt
        at={classScoresOf(id)}
        show={(lines) => (
          <Sheet
            key={piece.piece}
            classId={id}
            piece={piece}
            lines={lines}
            who={who}
            ofClass={now === null ? null : startOf(now.moment, piece.title)}
            entering={(on) => {
              setEntering(on ? at : null);
            }}
          />
        )}
      />
    </>
  );
}

/** The scores of a class: one tap at a finish, a few for the rest. */
export function ScoresView({ id, who }: { readonly id: string; readonly who: Me }) {
  return (
    <div class="floor">
      <FloorHead classId={id} title="Scores" />
      <LookedAt at={scoreFormOf(id)} show={({ pieces }) => <Pieces id={id} pieces={pieces} who={who} />} />
    </div>
  );
}

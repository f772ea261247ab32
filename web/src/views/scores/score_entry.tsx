import { useEffect, useRef, useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import {
  draftOf,
  isForecast,
  question,
  rangeText,
  scoreText,
  type Draft,
  type FormPerson,
  type FormPiece,
  type ScoreLine,
} from "../../model/scores.ts";
import { Efforts } from "../../ui/efforts.tsx";
import { Field } from "../../ui/field.tsx";
import { Said } from "../../ui/said.tsx";
import { listWords, sentence } from "../../ui/words.ts";
import { DraftFields } from "./draft_fields.tsx";
import { KeptBefore } from "./kept_before.tsx";

/** What somebody entered of one person. */
export interface Entered {
  readonly score: string;
  readonly doneAs: string;
  readonly effort: number | null;
  readonly note: string;
}

/** A dialog for one score, filled in from the forecast or with what is kept; `keep` says what was wrong, or null. */
export function ScoreEntry(props: {
  readonly piece: FormPiece;
  readonly person: FormPerson;
  readonly kept: ScoreLine | null;
  readonly partners: readonly string[];
  readonly mayNote: boolean;
  readonly keep: (entered: Entered) => Promise<Fault | null>;
  readonly close: () => void;
}) {
  const { piece, person, kept, partners } = props;
  const [draft, setDraft] = useState<Draft>(draftOf(piece, person.forecast, kept?.score ?? null, person));
  const [touched, setTouched] = useState(kept === null);
  const planned = kept === null || kept.done_as === person.done_as;
  const [doneAs, setDoneAs] = useState(planned ? person.said_as : kept.done_as);
  const [effort, setEffort] = useState<number | null>(kept?.effort ?? null);
  const [note, setNote] = useState("");
  const [asked, setAsked] = useState<string | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  const change = (next: Draft) => {
    setTouched(true);
    setAsked(null);
    setDraft(next);
  };
  const send = async () => {
    const doubt = touched ? question(draft, person) : null;
    if (doubt !== null && asked !== doubt) {
      setAsked(doubt);
      return;
    }
    const score = touched || kept === null ? scoreText(draft) : kept.score;
    const versions = doneAs.trim() === person.said_as ? person.done_as : doneAs;
    const wrong = await props.keep({ score, doneAs: versions, effort, note: note.trim() });
    setFault(wrong);
    if (wrong === null) dialog.current?.close();
  };
  return (
    <dialog ref={dialog} class="entry" aria-labelledby="entry-title" onClose={props.close}>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void send();
        }}
      >
        <div>
          <h2 id="entry-title">{partners.length > 0 ? listWords([person.name, ...partners]) : person.name}</h2>
          {kept ? <KeptBefore line={kept} /> : null}
          <p class="soft">
            {isForecast(person.forecast)
              ? `Forecast ${rangeText(piece.form, person.forecast)}.`
              : "No forecast: enter what it was."}
          </p>
        </div>
        <DraftFields piece={piece} person={person} draft={draft} change={change} />
        <Efforts name="effort" label="How hard, 0 to 10 (may stay empty)" value={effort} change={setEffort} />
        <details>
          <summary>Version{props.mayNote ? " and note" : ""}</summary>
          <div class="stack">
            <Field label="Done as" value={doneAs} change={setDoneAs} />
            {props.mayNote ? <Field label="Note for the coaches" value={note} change={setNote} /> : null}
          </div>
        </details>
        {asked ? (
          <Said weight="warning" alert>
            {asked}
          </Said>
        ) : null}
        {fault ? (
          <Said weight="problem" alert>
            {sentence(fault.text)}
          </Said>
        ) : null}
        <div class="row entry-foot">
          <button class="first">
            {asked ? "Yes, keep" : "Keep"} {touched || kept === null ? scoreText(draft) : kept.score}
          </button>
          <button
            type="button"
            onClick={() => {
              dialog.current?.close();
            }}
          >
            Cancel
          </button>
        </div>
      </form>
    </dialog>
  );
}

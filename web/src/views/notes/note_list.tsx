import { useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import { noteWords, type Note } from "../../model/notes.ts";
import { notes } from "../../state/gym.ts";
import { program } from "../../state/program.ts";
import { Said } from "../../ui/said.tsx";
import { TwoTaps } from "../../ui/two_taps.tsx";
import { sentence, shortDay } from "../../ui/words.ts";
import "./notes.css";

/** Words to the coaches, each with who said it and when; `nameOf` null leaves out of whom. */
export function NoteList(props: {
  readonly list: readonly Note[];
  readonly nameOf: ((person: string) => string) | null;
  readonly mayTakeAway: boolean;
}) {
  const [fault, setFault] = useState<Fault | null>(null);
  const takeAway = async (note: Note) => {
    const answer = await program.removeNote(note.number);
    setFault(answer.ok ? null : answer.fault);
    if (answer.ok) await notes.lookAgain();
  };
  return (
    <>
      {fault ? (
        <Said weight="problem" alert>
          {sentence(fault.text)}
        </Said>
      ) : null}
      <ul class="plain told-notes">
        {props.list.map((note) => (
          <li key={note.number}>
            <div>
              <p>
                {note.person !== null && props.nameOf ? <strong>{props.nameOf(note.person)}: </strong> : null}
                {note.text}
              </p>
              <p class="small soft">{noteWords(note, shortDay)}</p>
            </div>
            {props.mayTakeAway ? (
              <TwoTaps
                first="Take away…"
                label={`Take away: ${note.text}`}
                sure="Yes, take it away"
                kind="no-print"
                act={() => void takeAway(note)}
              />
            ) : null}
          </li>
        ))}
      </ul>
    </>
  );
}

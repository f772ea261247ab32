import { useState } from "preact/hooks";
import { repsOffered, repsToCap, roundsOffered, type Offered } from "../../model/picks.ts";
import { clock, secondsOf, type Draft, type FormPerson, type FormPiece } from "../../model/scores.ts";
import { Field } from "../../ui/field.tsx";
import { NumberPick } from "./number_pick.tsx";
import { Stepper } from "./stepper.tsx";

const partSteps = { time: [5, 30], rounds: [1, 1], reps: [1, 10], load: [2.5, 10], distance: [10, 100], kcal: [1, 10] } as const;
const partNames = { time: "Time", rounds: "Rounds", reps: "Reps", load: "Load in kg", distance: "Metres", kcal: "Kilocalories" } as const;

type Expected = Pick<FormPerson, "forecast" | "least" | "most">;

interface Fields {
  readonly draft: Draft;
  readonly change: (draft: Draft) => void;
}

function TimeField({ label, seconds, change }: { readonly label: string; readonly seconds: number; readonly change: (seconds: number) => void }) {
  const [typed, setTyped] = useState(clock(seconds));
  const read = secondsOf(typed);
  return (
    <Field
      label={label}
      value={typed}
      numeric
      wrong={read === null ? "is no time: write 12:31" : null}
      change={(value) => {
        setTyped(value);
        const now = secondsOf(value);
        if (now !== null) change(now);
      }}
    />
  );
}

/** Numbers to tap where it is known which there can be, else small and large steps. */
function Whole(props: {
  readonly label: string;
  readonly offered: Offered | null;
  readonly steps: readonly [small: number, large: number];
  readonly value: number;
  readonly change: (value: number) => void;
}) {
  const { offered, ...rest } = props;
  return offered === null ? <Stepper {...rest} /> : <NumberPick {...rest} offered={offered} />;
}

function RoundsFields({ draft, person, change }: Fields & { readonly person: Expected }) {
  const rounds = roundsOffered(person);
  if (draft.capped && rounds === null)
    return (
      <NumberPick
        label="Reps done"
        offered={repsToCap}
        value={draft.reps}
        change={(reps) => {
          change({ ...draft, rounds: 0, reps });
        }}
      />
    );
  return (
    <>
      <Whole
        label="Full rounds"
        offered={rounds}
        steps={[1, 1]}
        value={draft.rounds}
        change={(full) => {
          change({ ...draft, rounds: full });
        }}
      />
      <Whole
        label="Reps of the next round"
        offered={repsOffered(person.forecast.reps_per_round)}
        steps={[1, 5]}
        value={draft.reps}
        change={(reps) => {
          change({ ...draft, reps });
        }}
      />
    </>
  );
}

/** The fields of a score in the form of its piece. */
export function DraftFields(props: Fields & { readonly piece: Pick<FormPiece, "cap_s" | "parts">; readonly person: Expected }) {
  const { piece, person, draft, change } = props;
  const setPart = (index: number, value: number) => {
    change({ ...draft, parts: draft.parts.map((each, at) => (at === index ? value : each)) });
  };
  const name = (index: number) => partNames[draft.form] + (piece.parts > 1 ? `, interval ${index + 1}` : "");
  return (
    <>
      {draft.form === "time" && piece.cap_s !== null ? (
        <label class="beside">
          <input
            type="checkbox"
            checked={draft.capped}
            onChange={(event) => {
              change({ ...draft, capped: event.currentTarget.checked });
            }}
          />
          Stopped by the cap of {clock(piece.cap_s)}
        </label>
      ) : null}
      {draft.form === "rounds" || draft.capped ? <RoundsFields draft={draft} person={person} change={change} /> : null}
      {draft.form === "rounds" || draft.capped
        ? null
        : draft.parts.map((part, index) =>
            draft.form === "time" ? (
              <TimeField
                key={index}
                label={name(index)}
                seconds={part}
                change={(value) => {
                  setPart(index, value);
                }}
              />
            ) : (
              <Stepper
                key={index}
                label={name(index)}
                value={part}
                steps={partSteps[draft.form]}
                change={(value) => {
                  setPart(index, value);
                }}
              />
            ),
          )}
    </>
  );
}

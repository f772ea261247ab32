import { useState } from "preact/hooks";
import { repsOffered, repsToCap, roundsOffered, type Offered } from "../../model/picks.ts";
import { clock, loadSteps, lotFrom, secondsOf, type Draft, type FormPerson, type FormPiece } from "../../model/scores.ts";
import { Field } from "../../ui/field.tsx";
import { NumberPick } from "./number_pick.tsx";
import { evenStops, lotStops, Stepper, type Stop } from "./stepper.tsx";

const partSteps = { rounds: [1, 1], reps: [1, 10], distance: [10, 100], kcal: [1, 10] } as const;
const partNames = { time: "Time", rounds: "Rounds", reps: "Reps", load: "Load in kg", distance: "Metres", kcal: "Kilocalories" } as const;

type Expected = Pick<FormPerson, "forecast" | "least" | "most" | "loads" | "load_step">;

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
  const { offered, steps, ...rest } = props;
  return offered === null ? <Stepper {...rest} stops={evenStops(rest.value, steps)} /> : <NumberPick {...rest} offered={offered} />;
}

/** Where a part of a score goes with one tap: a load to the next lot of the hall, or by the steps of its bar. */
function stopsOf(form: Exclude<Draft["form"], "time">, value: number, person: Expected): readonly Stop[] {
  if (form !== "load") return evenStops(value, partSteps[form]);
  if (person.loads.length === 0) return evenStops(value, loadSteps(person));
  return lotStops((by) => lotFrom(person, value, by));
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
                stops={stopsOf(draft.form, part, person)}
                change={(value) => {
                  setPart(index, value);
                }}
              />
            ),
          )}
    </>
  );
}

import { useState } from "preact/hooks";
import { clock, secondsOf, type Draft, type FormPiece } from "../../model/scores.ts";
import { Field } from "../../ui/field.tsx";
import { Stepper } from "./stepper.tsx";

const partSteps = { time: [5, 30], rounds: [1, 1], reps: [1, 10], load: [0.5, 5], distance: [10, 100], kcal: [1, 10] } as const;
const partNames = { time: "Time", rounds: "Rounds", reps: "Reps", load: "Load in kg", distance: "Metres", kcal: "Kilocalories" } as const;

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

function RoundsFields({ draft, change }: Fields) {
  return (
    <>
      <Stepper
        label="Full rounds"
        value={draft.rounds}
        steps={[1, 1]}
        change={(rounds) => {
          change({ ...draft, rounds });
        }}
      />
      <Stepper
        label="Reps of the next round"
        value={draft.reps}
        steps={[1, 5]}
        change={(reps) => {
          change({ ...draft, reps });
        }}
      />
    </>
  );
}

/** The fields of a score in the form of its piece. */
export function DraftFields({ piece, draft, change }: Fields & { readonly piece: Pick<FormPiece, "cap_s" | "parts"> }) {
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
      {draft.form === "rounds" || draft.capped ? <RoundsFields draft={draft} change={change} /> : null}
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

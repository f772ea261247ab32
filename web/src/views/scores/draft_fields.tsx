import { numbersOf, partsOf } from "../../model/picks.ts";
import { clock, type Draft, type FormPerson, type FormPiece } from "../../model/scores.ts";
import { NumberPick } from "./number_pick.tsx";
import { Stepper } from "./stepper.tsx";

const partSteps = { time: [1, 10], rounds: [1, 1], reps: [1, 10], load: [2.5, 10], distance: [10, 100], kcal: [1, 10] } as const;

interface Fields {
  readonly piece: Pick<FormPiece, "form" | "cap_s" | "parts">;
  readonly person: Pick<FormPerson, "forecast" | "least" | "most" | "holds" | "loads" | "load_step">;
  readonly draft: Draft;
  readonly change: (draft: Draft) => void;
}

/** For who wrote the intervals down one by one: they are added up. */
function Intervals({ piece, draft, change }: Fields) {
  const parts = partsOf(piece, draft);
  return (
    <details>
      <summary>Interval by interval</summary>
      <div class="stack">
        {parts.map((part, index) => (
          <Stepper
            key={index}
            label={`Interval ${index + 1}${draft.form === "time" ? `, in seconds (${clock(part)})` : ""}`}
            value={part}
            steps={partSteps[draft.form]}
            change={(value) => {
              change({ ...draft, capped: false, parts: parts.map((each, at) => (at === index ? value : each)) });
            }}
          />
        ))}
      </div>
    </details>
  );
}

/** The fields of a score in the form of its piece: any score that is believed is three taps or fewer. */
export function DraftFields(props: Fields) {
  const { piece, person, draft, change } = props;
  const hasCap = draft.form === "time" && piece.cap_s !== null;
  const pick = (number: ReturnType<typeof numbersOf>[number]) => (
    <NumberPick
      key={number.label}
      number={number}
      change={(value) => {
        change(number.with(value));
      }}
    />
  );
  const [first, ...rest] = numbersOf(piece, person, draft);
  return (
    <>
      {first ? pick(first) : null}
      {hasCap ? (
        <label class="beside">
          <input
            type="checkbox"
            checked={draft.capped}
            onChange={(event) => {
              change({ ...draft, capped: event.currentTarget.checked });
            }}
          />
          Stopped by the cap of {clock(piece.cap_s ?? 0)}, with
        </label>
      ) : null}
      {rest.map(pick)}
      {piece.parts > 1 ? <Intervals {...props} /> : null}
    </>
  );
}

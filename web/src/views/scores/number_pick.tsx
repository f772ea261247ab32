import { useId } from "preact/hooks";
import { rowsFor, type Offered } from "../../model/picks.ts";

const rowNames = ["rest", "tens", "hundreds"];

/** A whole number by a tap, or two where there are many; a field for those that nobody expects. */
export function NumberPick(props: {
  readonly label: string;
  readonly offered: Offered;
  readonly value: number;
  readonly change: (value: number) => void;
}) {
  const { label, offered, value, change } = props;
  const id = useId();
  const rows = rowsFor(offered, value);
  return (
    <div class="field number-pick" role="group" aria-label={label}>
      <div class="pick-head">
        <label for={id}>{label}</label>
        <input
          id={id}
          inputMode="numeric"
          value={String(value)}
          onInput={(event) => {
            const typed = Number(event.currentTarget.value);
            if (Number.isInteger(typed) && typed >= 0) change(typed);
          }}
        />
      </div>
      {rows.map((row, at) => (
        <div key={at} class={row.numbers.length === 10 ? "pick-row digits" : "pick-row"}>
          {row.numbers.map((each) => (
            <button
              key={each}
              type="button"
              aria-pressed={row.chosen === each}
              aria-label={`${label}: ${rows.length > 1 ? `${rowNames[rows.length - 1 - at] ?? ""} ` : ""}${each}`}
              onClick={() => {
                change(row.after(each));
              }}
            >
              {at > 0 ? `+${each}` : each}
            </button>
          ))}
        </div>
      ))}
    </div>
  );
}

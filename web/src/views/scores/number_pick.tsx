import { useId, useState } from "preact/hooks";
import type { Row, ScoreNumber } from "../../model/picks.ts";

/** Whether its words need more room than three figures. */
const isLong = (row: Row): boolean => row.numbers.some((each) => row.say(each).length > 4);

/** A number by a tap, or a few where there are many; a field for those that nobody expects. */
export function NumberPick({ number, change }: { readonly number: ScoreNumber; readonly change: (value: number) => void }) {
  const { label, value, said, rows } = number;
  const [typed, setTyped] = useState<string | null>(null);
  const id = useId();
  const wrong = typed !== null && number.read(typed) === null;
  return (
    <div class="field number-pick" role="group" aria-label={label}>
      <div class="pick-head">
        <label for={id}>{label}</label>
        <input
          id={id}
          inputMode="numeric"
          autocomplete="off"
          aria-invalid={wrong ? "true" : undefined}
          value={typed ?? (said ? number.say(value) : "")}
          onInput={(event) => {
            setTyped(event.currentTarget.value);
            const read = number.read(event.currentTarget.value);
            if (read !== null) change(read);
          }}
          onBlur={() => {
            if (!wrong) setTyped(null);
          }}
        />
      </div>
      {wrong ? <span class="wrong">{`is none that can be: write it like ${number.say(value)}`}</span> : null}
      {rows.map((row) => (
        <div key={row.name} class={`pick-row${row.numbers.length === 10 ? " digits" : isLong(row) ? " long" : ""}`}>
          {row.numbers.map((each) => (
            <button
              key={each}
              type="button"
              aria-pressed={said && row.chosen === each}
              aria-label={`${label}: ${row.name ? `${row.name} ` : ""}${row.say(each).replace("+", "")}`}
              onClick={() => {
                setTyped(null);
                change(row.after(each));
              }}
            >
              {row.say(each)}
            </button>
          ))}
        </div>
      ))}
    </div>
  );
}

/** A cell to write a number into; what is no number yet is left as it is typed and not passed on. */
export function NumberCell(props: {
  readonly label: string;
  readonly value: number | null;
  readonly change: (value: number | null) => void;
  readonly mayBeEmpty?: boolean;
  readonly step?: number;
}) {
  return (
    <input
      class="number-cell"
      type="number"
      min={0}
      step={props.step ?? 1}
      aria-label={props.label}
      value={props.value ?? ""}
      onChange={(event) => {
        const typed = event.currentTarget.value;
        if (typed === "" && props.mayBeEmpty) props.change(null);
        const number = Number(typed);
        if (typed !== "" && Number.isFinite(number) && number >= 0) props.change(number);
      }}
    />
  );
}

/** A cell to write words into. */
export function TextCell(props: { readonly label: string; readonly value: string; readonly change: (value: string) => void }) {
  return (
    <input
      class="text-cell"
      aria-label={props.label}
      value={props.value}
      onInput={(event) => {
        props.change(event.currentTarget.value);
      }}
    />
  );
}

/** A cell to tick. */
export function TickCell(props: { readonly label: string; readonly value: boolean; readonly change: (value: boolean) => void }) {
  return (
    <label class="tick-cell">
      <input
        type="checkbox"
        aria-label={props.label}
        checked={props.value}
        onChange={(event) => {
          props.change(event.currentTarget.checked);
        }}
      />
    </label>
  );
}

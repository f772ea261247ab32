import { useId } from "preact/hooks";

/** A number that is mostly right: small and large steps beside it, and a field for everything else. */
export function Stepper(props: {
  readonly label: string;
  readonly value: number;
  readonly steps: readonly [small: number, large: number];
  readonly change: (value: number) => void;
}) {
  const id = useId();
  const [small, large] = props.steps;
  const step = (by: number, words: string) => (
    <button
      type="button"
      aria-label={`${props.label}: ${by < 0 ? "less by" : "more by"} ${Math.abs(by)}`}
      onClick={() => {
        props.change(Math.max(0, Math.round((props.value + by) * 10) / 10));
      }}
    >
      {words}
    </button>
  );
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <div class="stepper">
        {large === small ? null : step(-large, `−${large}`)}
        {step(-small, `−${small}`)}
        <input
          id={id}
          inputMode="decimal"
          value={String(props.value)}
          onInput={(event) => {
            const typed = Number(event.currentTarget.value.replace(",", "."));
            if (Number.isFinite(typed) && typed >= 0) props.change(typed);
          }}
        />
        {step(small, `+${small}`)}
        {large === small ? null : step(large, `+${large}`)}
      </div>
    </div>
  );
}

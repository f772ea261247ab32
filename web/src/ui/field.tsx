import { useId } from "preact/hooks";

export interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly change: (value: string) => void;
  readonly type?: "text" | "password" | "number" | "date" | "time";
  readonly hint?: string;
  readonly wrong?: string | null;
  readonly needed?: boolean;
  readonly complete?: "username" | "new-password" | "current-password";
  readonly numeric?: boolean;
  readonly suggestions?: string;
}

/** A line to fill in, with its label above and what is wrong with it below. */
export function Field(props: FieldProps) {
  const id = useId();
  const told = props.wrong ?? props.hint;
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <input
        id={id}
        type={props.type ?? "text"}
        value={props.value}
        required={props.needed ?? false}
        autocomplete={props.complete ?? "off"}
        inputMode={props.numeric ? "numeric" : undefined}
        list={props.suggestions}
        aria-invalid={props.wrong ? "true" : undefined}
        aria-describedby={told ? `${id}-told` : undefined}
        onInput={(event) => {
          props.change(event.currentTarget.value);
        }}
      />
      {told ? (
        <span id={`${id}-told`} class={props.wrong ? "wrong" : "small soft"}>
          {told}
        </span>
      ) : null}
    </div>
  );
}

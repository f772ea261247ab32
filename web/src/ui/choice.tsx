/** One of several, each with its words, below a label. */
export function Choice(props: {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly (readonly [string, string])[];
  readonly change: (value: string) => void;
}) {
  return (
    <label class="field">
      <span class="label">{props.label}</span>
      <select
        value={props.value}
        onChange={(event) => {
          props.change(event.currentTarget.value);
        }}
      >
        {props.choices.map(([id, words]) => (
          <option key={id} value={id}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}

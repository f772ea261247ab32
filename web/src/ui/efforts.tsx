/** How hard something was, 0 to 10, one tap. `name` tells several on one page apart. */
export function Efforts(props: {
  readonly name: string;
  readonly label: string;
  readonly value: number | null;
  readonly change: (effort: number) => void;
}) {
  return (
    <fieldset class="field bare-set">
      <legend class="label">{props.label}</legend>
      <div class="efforts">
        {Array.from({ length: 11 }, (_, effort) => (
          <label key={effort}>
            <input
              type="radio"
              name={props.name}
              checked={props.value === effort}
              onChange={() => {
                props.change(effort);
              }}
            />
            {effort}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

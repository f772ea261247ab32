import { useState } from "preact/hooks";
import type { PersonRow } from "../../model/people.ts";
import { isMark } from "../../model/people_change.ts";
import { Field } from "../../ui/field.tsx";

/** Test results, each under the name that it has on a board. */
export function MarksField(props: {
  readonly row: PersonRow;
  readonly columns: readonly string[];
  readonly change: (column: string, cell: string) => void;
  readonly wrongOf: (column: string) => string | null;
}) {
  const [adding, setAdding] = useState("");
  const shown = [...new Set([...props.columns, ...Object.keys(props.row).filter(isMark)])];
  return (
    <fieldset class="plain-set stack">
      <legend>Marks</legend>
      <div class="fields">
        {shown.map((column) => (
          <Field
            key={column}
            label={column.replaceAll("_", " ")}
            value={props.row[column] ?? ""}
            change={(cell) => {
              props.change(column, cell);
            }}
            wrong={props.wrongOf(column)}
          />
        ))}
      </div>
      <div class="row add-mark">
        <Field
          label="Another mark, as on a board"
          value={adding}
          change={setAdding}
          hint="such as: run 400 m, max pull-up, push-up in 2:00, 1rm back squat"
        />
        <button
          type="button"
          disabled={!isMark(adding.trim())}
          onClick={() => {
            props.change(adding.trim(), "");
            setAdding("");
          }}
        >
          Add the mark
        </button>
      </div>
    </fieldset>
  );
}

import { useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import type { PeopleTable, PersonRow } from "../../model/people.ts";
import { isMark, limitsOf, newId, withCell, withLimits, type Limit } from "../../model/people_change.ts";
import { keepPeople } from "../../state/people.ts";
import { Field } from "../../ui/field.tsx";
import { Said } from "../../ui/said.tsx";
import { LimitsField } from "./limits_field.tsx";
import { MarksField } from "./marks_field.tsx";
import { sentence } from "../../ui/words.ts";

interface FormProps {
  readonly table: PeopleTable;
  readonly row: PersonRow | null;
  /** Called when it was saved, with whom, or when it was left (null). */
  readonly done: (id: string | null) => void;
}

const days: readonly (readonly [string, string])[] = [
  ["mon", "Monday"], ["tue", "Tuesday"], ["wed", "Wednesday"], ["thu", "Thursday"], ["fri", "Friday"],
  ["sat", "Saturday"], ["sun", "Sunday"],
];

function DaysField({ value, change }: { readonly value: string; readonly change: (days: string) => void }) {
  const chosen = value.split(/\s+/);
  return (
    <fieldset class="plain-set">
      <legend>Comes on</legend>
      <div class="row">
        {days.map(([day, name]) => (
          <label key={day} class="beside">
            <input
              type="checkbox"
              checked={chosen.includes(day)}
              onChange={(event) => {
                const on = event.currentTarget.checked;
                change(days.filter(([each]) => (each === day ? on : chosen.includes(each))).map(([each]) => each).join(" "));
              }}
            />
            {name}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

const sexes = [["", "not said"], ["f", "female"], ["m", "male"], ["x", "other"]] as const;

function SexField({ value, change }: { readonly value: string; readonly change: (sex: string) => void }) {
  return (
    <div class="field">
      <label for="sex">Sex</label>
      <select
        id="sex"
        value={value}
        onChange={(event) => {
          change(event.currentTarget.value);
        }}
      >
        {sexes.map(([id, name]) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </div>
  );
}

const numbers = [
  ["age", "Age"],
  ["mass_kg", "Body mass, kg (for mechanics, never shown)"],
  ["height_cm", "Height, cm"],
  ["training_years", "Years of training"],
] as const;

/** The cell of this row that a refusal names, with its words. */
function wrongCell(fault: Fault | null, index: number): { readonly column: string; readonly text: string } | null {
  const met = /^rows\.(\d+)\.(.+)$/.exec(fault?.field ?? "");
  if (!fault || !met || Number(met[1]) !== index) return null;
  const words = fault.text.split(`${met[2] ?? ""}: `);
  return { column: met[2] ?? "", text: words[words.length - 1] ?? fault.text };
}

/** Everything that is kept of somebody, to be changed and saved as a whole. */
export function PersonForm({ table, row: before, done }: FormProps) {
  const [row, setRow] = useState<PersonRow>(before ?? {});
  const [limits, setLimits] = useState<readonly Limit[]>(limitsOf(row));
  const [fault, setFault] = useState<Fault | null>(null);
  const [busy, setBusy] = useState(false);
  const index = before ? table.rows.indexOf(before) : table.rows.length;
  const wrong = wrongCell(fault, index);
  const set = (column: string) => (cell: string) => {
    setRow((now) => ({ ...now, [column]: cell }));
  };
  const wrongOf = (column: string) => (wrong?.column === column ? wrong.text : null);

  const save = async () => {
    const id = row["id"] ?? newId(table.rows, row["name"] ?? "");
    const filled = Object.entries(row).reduce<PersonRow>((all, [column, cell]) => withCell(all, column, cell), {});
    const whole = withLimits({ ...filled, id }, limits);
    setBusy(true);
    const rows = before ? table.rows.map((each) => (each === before ? whole : each)) : [...table.rows, whole];
    const failed = await keepPeople(rows, table.version);
    setBusy(false);
    setFault(failed);
    if (!failed) done(id);
  };

  return (
    <form
      class="sheet stack person-form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      {fault ? (
        <Said weight="problem" alert>
          Not saved. {sentence(fault.text)}
        </Said>
      ) : null}
      <div class="fields">
        <Field label="Name" value={row["name"] ?? ""} change={set("name")} needed wrong={wrongOf("name")} />
        <SexField value={row["sex"] ?? ""} change={set("sex")} />
        {numbers.map(([column, label]) => (
          <Field
            key={column}
            label={label}
            value={row[column] ?? ""}
            change={set(column)}
            numeric
            wrong={wrongOf(column)}
          />
        ))}
      </div>
      <DaysField value={row["attends"] ?? ""} change={set("attends")} />
      <LimitsField limits={limits} change={setLimits} wrong={wrongOf("limits") ?? wrongOf("actions")} />
      <MarksField
        row={row}
        columns={table.columns.filter(isMark)}
        change={(column, cell) => {
          set(column)(cell);
        }}
        wrongOf={wrongOf}
      />
      <div class="row">
        <button class="first" disabled={busy}>
          Save
        </button>
        <button
          type="button"
          onClick={() => {
            done(null);
          }}
        >
          Leave as it was
        </button>
      </div>
    </form>
  );
}

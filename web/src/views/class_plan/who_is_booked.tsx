import { useState } from "preact/hooks";
import { usuallyOn } from "../../model/class_change.ts";
import type { PersonRow } from "../../model/people.ts";
import { FindField } from "../../ui/find_field.tsx";
import { count, weekdayOf } from "../../ui/words.ts";

interface BookedProps {
  readonly rows: readonly PersonRow[];
  readonly date: string;
  readonly booked: readonly string[];
  readonly change: (booked: readonly string[]) => void;
}

const idOf = (row: PersonRow): string => row["id"] ?? "";

function AllAtOnce({ rows, date, booked, change }: BookedProps) {
  const usual = usuallyOn(rows, date);
  return (
    <div class="row">
      {usual.length > 0 ? (
        <button
          type="button"
          onClick={() => {
            change([...new Set([...booked, ...usual])]);
          }}
        >
          {`The ${usual.length} of ${weekdayOf(date)}s`}
        </button>
      ) : null}
      <button
        type="button"
        disabled={booked.length === rows.length}
        onClick={() => {
          change(rows.map(idOf));
        }}
      >
        Everybody
      </button>
      <button
        type="button"
        disabled={booked.length === 0}
        onClick={() => {
          change([]);
        }}
      >
        Nobody
      </button>
    </div>
  );
}

/** Who is booked: a tick a person, or all of a weekday at once. */
export function WhoIsBooked(props: BookedProps) {
  const { rows, booked, change } = props;
  const [wanted, setWanted] = useState("");
  const byName = [...rows].sort((a, b) => (a["name"] ?? "").localeCompare(b["name"] ?? ""));
  const shown = byName.filter((row) => (row["name"] ?? "").toLowerCase().includes(wanted.trim().toLowerCase()));
  const toggle = (id: string, on: boolean) => {
    change(on ? [...booked, id] : booked.filter((each) => each !== id));
  };
  return (
    <fieldset class="sheet stack booked">
      <legend>Who is booked</legend>
      {rows.length === 0 ? (
        <p>
          The gym knows nobody yet. <a href="/people">Add people</a> first, or book them later.
        </p>
      ) : (
        <>
          <p aria-live="polite">
            {booked.length === 0
              ? "Nobody is booked: the class counts on everybody whom the gym knows."
              : `${booked.length} of ${count(rows.length, "person", "people")} booked.`}
          </p>
          <AllAtOnce {...props} />
          <FindField wanted={wanted} find={setWanted} />
          <ul class="plain booked-list">
            {shown.map((row) => (
              <li key={idOf(row)}>
                <label class="beside">
                  <input
                    type="checkbox"
                    checked={booked.includes(idOf(row))}
                    onChange={(event) => {
                      toggle(idOf(row), event.currentTarget.checked);
                    }}
                  />
                  {row["name"]}
                </label>
              </li>
            ))}
          </ul>
          {shown.length === 0 ? <p class="soft">Nobody is called so.</p> : null}
        </>
      )}
    </fieldset>
  );
}

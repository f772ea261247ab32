import { useState } from "preact/hooks";
import type { Gym } from "../../model/gym.ts";
import type { PeopleTable, PersonRow } from "../../model/people.ts";
import { actionsOn, isMark } from "../../model/people_change.ts";
import { gym, people } from "../../state/gym.ts";
import { FindField } from "../../ui/find_field.tsx";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Wide } from "../../ui/wide.tsx";
import { count } from "../../ui/words.ts";
import { Import } from "./import.tsx";
import "./people.css";

const dayLetters: readonly (readonly [string, string])[] = [
  ["mon", "M"], ["tue", "T"], ["wed", "W"], ["thu", "T"], ["fri", "F"], ["sat", "S"], ["sun", "S"],
];

function Attends({ days }: { readonly days: string }) {
  const which = days.split(/\s+/);
  return (
    <span class="week" role="img" aria-label={days || "no days said"}>
      {dayLetters.map(([day, letter]) => (
        <span key={day} aria-hidden="true" class={which.includes(day) ? "on" : undefined}>
          {letter}
        </span>
      ))}
    </span>
  );
}

function Row({ row, marks, day }: { readonly row: PersonRow; readonly marks: readonly string[]; readonly day: string }) {
  const actions = actionsOn(row, day);
  return (
    <tr>
      <th scope="row">
        <a href={`/people/${encodeURIComponent(row["id"] ?? "")}`}>{row["name"]}</a>
      </th>
      <td class="actions">{actions.length > 0 ? actions.map((each) => <div key={each}>{each}</div>) : <span class="soft">as written</span>}</td>
      <td class="comes-on">
        <Attends days={row["attends"] ?? ""} />
      </td>
      {marks.map((column) => (
        <td key={column} class="number">
          {row[column] ?? ""}
        </td>
      ))}
    </tr>
  );
}

function PeopleList({ table, known }: { readonly table: PeopleTable; readonly known: Gym }) {
  const [wanted, setWanted] = useState("");
  const marks = table.columns.filter((column) => isMark(column) && table.rows.some((row) => row[column]));
  const shown = table.rows.filter((row) => (row["name"] ?? "").toLowerCase().includes(wanted.trim().toLowerCase()));
  if (table.rows.length === 0) return <p>Nobody yet. Add somebody, or import the table that you have.</p>;
  return (
    <>
      <div class="row">
        <FindField wanted={wanted} find={setWanted} />
        <span class="soft" aria-live="polite">
          {shown.length === table.rows.length
            ? count(shown.length, "person", "people")
            : `${shown.length} of ${count(table.rows.length, "person", "people")}`}
        </span>
      </div>
      <Wide label="People and their marks" more="More marks to the right" kind="sheet-edge">
        <table class="people">
          <thead>
            <tr>
              <th scope="col">Name</th>
              <th scope="col">What they do instead</th>
              <th scope="col" class="comes-on">Comes on</th>
              {marks.map((column) => (
                <th key={column} scope="col" class="number">
                  {column.replaceAll("_", " ")}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {shown.map((row) => (
              <Row key={row["id"]} row={row} marks={marks} day={known.today} />
            ))}
          </tbody>
        </table>
      </Wide>
    </>
  );
}

/** Everybody, with marks and what each does instead. */
export function PeopleView() {
  const [importing, setImporting] = useState(false);
  return (
    <div class="stack">
      <div class="class-head">
        <h1>People</h1>
        <div class="row">
          <button
            type="button"
            aria-expanded={importing}
            onClick={() => {
              setImporting(!importing);
            }}
          >
            Import a table
          </button>
          <a class="button first" href="/people/new">
            Add somebody
          </a>
        </div>
      </div>
      <LookedAt
        at={gym}
        show={(known) => (
          <LookedAt
            at={people}
            show={(table) => (
              <>
                {importing ? (
                  <Import
                    table={table}
                    done={() => {
                      setImporting(false);
                    }}
                  />
                ) : null}
                <PeopleList table={table} known={known} />
              </>
            )}
          />
        )}
      />
    </div>
  );
}

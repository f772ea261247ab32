import type { ClassRow } from "../../model/gym.ts";
import { classes } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { inOrder, whenOf } from "./class_rows.ts";

function ClassesBefore({ rows }: { readonly rows: readonly ClassRow[] }) {
  return (
    <section class="sheet" aria-labelledby="before">
      <h2 id="before">Classes before</h2>
      <ul class="plain">
        {inOrder(rows)
          .reverse()
          .map((row) => (
            <li key={row.id} class="row">
              <a href={`/class/${row.id}`}>{whenOf(row)}</a>
              <a href={`/classes/new?like=${row.id}`} aria-label={`Again a week later: ${whenOf(row)}`}>
                Again a week later
              </a>
            </li>
          ))}
      </ul>
    </section>
  );
}

/** No class on a day to come: what to make first, and the classes before. */
export function NoClass({ mayMake }: { readonly mayMake: boolean }) {
  return (
    <div class="stack">
      <h1>No class ahead</h1>
      <p>The gym has no class on a day to come.</p>
      {mayMake ? (
        <>
          <div class="row">
            <a class="button first" href="/classes/new">
              Make a class
            </a>
            <a class="button" href="/board">
              Chalk a board
            </a>
            <a class="button" href="/people">
              Add people
            </a>
          </div>
          <LookedAt at={classes} show={(rows) => (rows.length === 0 ? null : <ClassesBefore rows={rows} />)} />
        </>
      ) : null}
    </div>
  );
}

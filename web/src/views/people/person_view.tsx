import { useState } from "preact/hooks";
import type { PersonRow } from "../../model/people.ts";
import { isMark, limitsOf } from "../../model/people_change.ts";
import { gym, people, scoresOf } from "../../state/gym.ts";
import { goTo } from "../../state/route.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Said } from "../../ui/said.tsx";
import { dayWords, markWords } from "../../ui/words.ts";
import { PersonNotes } from "../notes/person_notes.tsx";
import { History } from "./history.tsx";
import { PersonForm } from "./person_form.tsx";
import "./people.css";

function Instead({ row, today, own }: { readonly row: PersonRow; readonly today: string; readonly own: boolean }) {
  const holding = limitsOf(row).filter((each) => each.until === "" || each.until >= today);
  return (
    <section class="sheet" aria-labelledby="instead">
      <h2 id="instead">{own ? "What you do instead" : "What they do instead"}</h2>
      {holding.length === 0 ? <p>Everything as written.</p> : null}
      <ul class="plain tight">
        {holding.map((each) => (
          <li key={each.id} class="action">
            {each.action || "see the coach"}
            {each.until ? <span class="soft small"> until {dayWords(each.until)}</span> : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Marks({ row }: { readonly row: PersonRow }) {
  const marks = Object.entries(row).filter(([column]) => isMark(column));
  return (
    <section class="sheet" aria-labelledby="marks">
      <h2 id="marks">Marks</h2>
      {marks.length === 0 ? <p class="soft">None yet: forecasts are those of the group.</p> : null}
      <dl class="marks">
        {marks.map(([column, cell]) => {
          const [name, value] = markWords(column, cell);
          return (
            <div key={column}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          );
        })}
      </dl>
    </section>
  );
}

/** What they do instead, their marks, their scores. */
export function PersonBody({ row, id, own }: { readonly row: PersonRow; readonly id: string; readonly own: boolean }) {
  return (
    <>
      <div class="halves">
        <LookedAt at={gym} show={(known) => <Instead row={row} today={known.today} own={own} />} />
        <Marks row={row} />
      </div>
      <section class="sheet" aria-labelledby="fact">
        <h2 id="fact">Forecast and fact</h2>
        <LookedAt at={scoresOf(id)} show={(scores) => <History scores={scores} />} />
      </section>
    </>
  );
}

/** One person as the coach sees them. */
export function PersonView({ id }: { readonly id: string }) {
  const [editing, setEditing] = useState(false);
  return (
    <LookedAt
      at={people}
      show={(table) => {
        const row = table.rows.find((each) => each["id"] === id);
        if (!row)
          return (
            <Said weight="warning">
              Nobody here is called {id}. <a href="/people">To all people</a>
            </Said>
          );
        return (
          <div class="stack">
            <div class="class-head">
              <div>
                <a href="/people" class="small">
                  All people
                </a>
                <h1>{row["name"]}</h1>
              </div>
              {editing ? null : (
                <button
                  type="button"
                  onClick={() => {
                    setEditing(true);
                  }}
                >
                  Edit
                </button>
              )}
            </div>
            {editing ? (
              <PersonForm
                table={table}
                row={row}
                done={() => {
                  setEditing(false);
                }}
              />
            ) : (
              <>
                <PersonNotes id={id} name={row["name"] ?? id} />
                <PersonBody row={row} id={id} own={false} />
              </>
            )}
          </div>
        );
      }}
    />
  );
}

/** Somebody to add. */
export function NewPersonView() {
  return (
    <div class="stack">
      <h1>Add somebody</h1>
      <LookedAt
        at={people}
        show={(table) => (
          <PersonForm
            table={table}
            row={null}
            done={(id) => {
              goTo(id === null ? "/people" : `/people/${encodeURIComponent(id)}`);
            }}
          />
        )}
      />
    </div>
  );
}

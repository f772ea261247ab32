import type { Me } from "../../model/account.ts";
import type { ClassRow, KeptClass } from "../../model/gym.ts";
import { boardOf, briefOf, classes, classOf, gym, readingOf, rehearsalOf } from "../../state/gym.ts";
import { goTo } from "../../state/route.ts";
import { Caution } from "../../ui/caution.tsx";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Said } from "../../ui/said.tsx";
import { dayWords, shortDay } from "../../ui/words.ts";
import { EmergencyButton } from "../floor/emergency.tsx";
import { ClassRepairs } from "./class_repairs.tsx";
import { ClassHour } from "./class_hour.tsx";
import { LastTime } from "../last_time/last_time.tsx";
import { Matters } from "./matters.tsx";
import { SetOutList } from "./set_out_list.tsx";
import { WhoComes } from "./who_comes.tsx";
import "../floor/floor.css";
import "./next_class.css";

type GymClass = KeptClass["class"];

/** A class by its day and hour, short. */
const whenOf = (row: ClassRow): string => [row.date ? shortDay(row.date) : row.id, row.start].filter(Boolean).join(", ");

const inOrder = (rows: readonly ClassRow[]): ClassRow[] =>
  [...rows].sort((a, b) => `${a.date ?? ""} ${a.start ?? ""}`.localeCompare(`${b.date ?? ""} ${b.start ?? ""}`));

function OtherClasses({ id }: { readonly id: string }) {
  return (
    <LookedAt
      at={classes}
      show={(rows) =>
        rows.length < 2 ? null : (
          <label class="beside small">
            Class
            <select
              value={id}
              onChange={(event) => {
                goTo(`/class/${event.currentTarget.value}`);
              }}
            >
              {inOrder(rows).map((row) => (
                <option key={row.id} value={row.id}>
                  {whenOf(row)}
                </option>
              ))}
            </select>
          </label>
        )
      }
    />
  );
}

function conditions(gymClass: GymClass): string {
  const { weather } = gymClass;
  return [
    weather.text,
    weather.temp_c === null ? "" : `${weather.temp_c} °C`,
    weather.rain ? "rain" : "",
    weather.daylight ? "" : "dark outside",
    gymClass.indoors ? "all indoors" : "",
  ]
    .filter(Boolean)
    .join(", ");
}

const mayEdit = (who: Me): boolean => who.role === "owner" || who.role === "coach";

function Head({ gymClass, isNext, who }: { readonly gymClass: GymClass; readonly isNext: boolean; readonly who: Me }) {
  const outside = conditions(gymClass);
  return (
    <div class="class-head">
      <div>
        <h1>
          {isNext ? <span class="soft">Next class: </span> : null}
          {gymClass.date ? dayWords(gymClass.date) : gymClass.id}
          {gymClass.start ? `, ${gymClass.start}` : ""}
        </h1>
        <p class="soft">
          {gymClass.minutes === null ? "no end is set" : `${gymClass.minutes} minutes`}
          {outside ? `; ${outside}` : ""}
        </p>
      </div>
      <div class="row no-print">
        {gymClass.board_id ? (
          <a class="button first" href={`/clock/${gymClass.id}/remote`}>
            Clock
          </a>
        ) : null}
        <a class="button" href={`/arrivals/${gymClass.id}`}>
          Arrivals
        </a>
        <a class="button" href={`/scores/${gymClass.id}`}>
          Scores
        </a>
        <EmergencyButton />
        {mayEdit(who) ? <OtherClasses id={gymClass.id} /> : null}
        {mayEdit(who) && gymClass.board_id ? (
          <>
            <a class="button" href={`/board/${gymClass.board_id}?class=${gymClass.id}`}>
              Open the board
            </a>
            <a class="button" href={`/wall/${gymClass.board_id}`}>
              For the members
            </a>
          </>
        ) : null}
        {mayEdit(who) ? (
          <>
            <a class="button" href={`/classes/${gymClass.id}`}>
              Change the class
            </a>
            <a class="button" href="/classes/new">
              New class
            </a>
          </>
        ) : null}
        <button
          type="button"
          class="first"
          onClick={() => {
            print();
          }}
        >
          Print the brief
        </button>
      </div>
    </div>
  );
}

function BoardReadBack({ id }: { readonly id: string }) {
  return (
    <section class="sheet read-back" aria-labelledby="read-back">
      <h2 id="read-back">The board, read back</h2>
      <div class="two">
        <LookedAt at={boardOf(id)} show={(board) => <pre class="chalk">{board.text}</pre>} />
        <LookedAt
          at={readingOf(id)}
          show={(reading) => (
            <ol class="plain sentences">
              {reading.reading.map((sentence, index) => (
                <li key={index}>{sentence}</li>
              ))}
            </ol>
          )}
        />
      </div>
    </section>
  );
}

function ClassPage({ id, who, isNext }: { readonly id: string; readonly who: Me; readonly isNext: boolean }) {
  return (
    <LookedAt
      at={classOf(id)}
      show={({ class: gymClass }) => (
        <div class="next-class stack">
          <Head gymClass={gymClass} isNext={isNext} who={who} />
          {gymClass.board_id ? (
            <div class="columns">
              <div class="stack">
                <LookedAt
                  at={rehearsalOf(id)}
                  show={(rehearsal) => (
                    <>
                      <Matters rehearsal={rehearsal} board={who.role === "relief" ? null : gymClass.board_id} />
                      {mayEdit(who) ? (
                        <ClassRepairs boardId={gymClass.board_id} classId={id} rehearsal={rehearsal} />
                      ) : null}
                      <ClassHour boardId={gymClass.board_id} classId={id} rehearsal={rehearsal} start={gymClass.start} />
                    </>
                  )}
                />
                <BoardReadBack id={gymClass.board_id} />
              </div>
              <div class="stack">
                {mayEdit(who) ? <LastTime boardId={gymClass.board_id} /> : null}
                <LookedAt
                  at={briefOf(id)}
                  show={(brief) => (
                    <>
                      <WhoComes brief={brief} day={gymClass.date} links={who.role !== "relief"} />
                      <SetOutList
                        brief={brief}
                        rehearsal={rehearsalOf(id).now.value.value}
                        faults={gymClass.faults}
                      />
                    </>
                  )}
                />
              </div>
            </div>
          ) : (
            <Said weight="warning">
              This class has no board yet.
              {mayEdit(who) ? (
                <>
                  {" "}
                  <a href={`/classes/${id}`}>Choose one</a> or <a href="/board">chalk one</a>.
                </>
              ) : null}
            </Said>
          )}
          <Caution />
        </div>
      )}
    />
  );
}

/** What a class needs, for a gym that has none ahead. */
function FirstSteps() {
  return (
    <div class="stack">
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
    </div>
  );
}

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

/** What opens at ten to six: the next class, or the class that the address names. */
export function NextClass({ id, who }: { readonly id: string | null; readonly who: Me }) {
  return (
    <LookedAt
      at={gym}
      show={({ next_class }) => {
        const shown = id ?? next_class;
        return shown === null ? (
          <div class="stack">
            <h1>No class ahead</h1>
            <p>The gym has no class on a day to come.</p>
            {mayEdit(who) ? <FirstSteps /> : null}
          </div>
        ) : (
          <ClassPage key={shown} id={shown} who={who} isNext={shown === next_class} />
        );
      }}
    />
  );
}

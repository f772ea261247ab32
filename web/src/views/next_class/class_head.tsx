import type { ComponentChildren } from "preact";
import { isCoach, type Me } from "../../model/account.ts";
import type { ClassRow, GymClass } from "../../model/gym.ts";
import { classes } from "../../state/gym.ts";
import { goTo } from "../../state/route.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { phoneWidth, useNarrow } from "../../ui/use_narrow.ts";
import { dayWords } from "../../ui/words.ts";
import { EmergencyButton } from "../floor/emergency.tsx";
import { inOrder, whenOf } from "./class_rows.ts";

function OtherClasses({ id, rows }: { readonly id: string; readonly rows: readonly ClassRow[] }) {
  if (rows.length < 2) return null;
  return (
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

/** What is done with a class beforehand: behind one word on a phone, where the floor comes first. */
function Beforehand({ children }: { readonly children: ComponentChildren }) {
  return useNarrow(phoneWidth) ? (
    <details class="more-of-class">
      <summary class="button">More of this class</summary>
      <div class="row">{children}</div>
    </details>
  ) : (
    <>{children}</>
  );
}

function PlanLinks({ gymClass }: { readonly gymClass: GymClass }) {
  return (
    <>
      <LookedAt at={classes} show={(rows) => <OtherClasses id={gymClass.id} rows={rows} />} />
      {gymClass.board_id ? (
        <>
          <a class="button" href={`/board/${gymClass.board_id}?class=${gymClass.id}`}>
            Open the board
          </a>
          <a class="button" href={`/wall/${gymClass.board_id}`}>
            For the members
          </a>
        </>
      ) : null}
      <a class="button" href={`/classes/${gymClass.id}`}>
        Change the class
      </a>
      <a class="button" href="/classes/new">
        New class
      </a>
    </>
  );
}

/** Which class it is, and where to from it. */
export function ClassHead({ gymClass, isNext, who }: { readonly gymClass: GymClass; readonly isNext: boolean; readonly who: Me }) {
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
        <Beforehand>
          {isCoach(who) ? <PlanLinks gymClass={gymClass} /> : null}
          <button
            type="button"
            onClick={() => {
              print();
            }}
          >
            Print the brief
          </button>
        </Beforehand>
      </div>
    </div>
  );
}

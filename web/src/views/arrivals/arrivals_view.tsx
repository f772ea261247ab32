import { useState } from "preact/hooks";
import {
  arrivalPath,
  countWords,
  isOfList,
  listWith,
  minutesLate,
  walkInPath,
  type Arriving,
  type ArrivalState,
} from "../../model/arrivals.ts";
import type { KeptClass } from "../../model/gym.ts";
import { waiting } from "../../model/outbox.ts";
import { arrivalsOf, classOf, listEffectOf } from "../../state/gym.ts";
import { sender } from "../../state/sender.ts";
import { Caution } from "../../ui/caution.tsx";
import { Field } from "../../ui/field.tsx";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Said } from "../../ui/said.tsx";
import { isOld, MayBeOld, Working } from "../../ui/working.tsx";
import { FloorHead } from "../floor/floor_head.tsx";
import { LineUp } from "../line_up/line_up.tsx";

type GymClass = KeptClass["class"];

const lateChoices = [0, 5, 10, 15];

function tick(classId: string, person: Arriving, state: ArrivalState, lateMinutes: number): void {
  sender.send({
    path: arrivalPath(classId),
    how: "POST",
    body: { person: person.id, state, ...(state === "here" ? { late_s: lateMinutes * 60 } : {}) },
    words: `${person.name}: ${state}`,
  });
}

function lateWords(person: Arriving): string | null {
  const minutes = Math.round(person.late_s / 60);
  return person.state === "here" && minutes > 0 ? `${minutes} min late` : null;
}

function More(props: { readonly person: Arriving; readonly classId: string; readonly done: () => void }) {
  const { person, classId, done } = props;
  return (
    <div class="more" role="group" aria-label={`${person.name}: late or not coming`}>
      {lateChoices.map((minutes) => (
        <button
          key={minutes}
          type="button"
          onClick={() => {
            tick(classId, person, "here", minutes);
            done();
          }}
        >
          {minutes === 0 ? "on time" : `${minutes} min late`}
        </button>
      ))}
      <button
        type="button"
        onClick={() => {
          tick(classId, person, "away", 0);
          done();
        }}
      >
        not coming
      </button>
    </div>
  );
}

function Row({ person, gymClass }: { readonly person: Arriving; readonly gymClass: GymClass }) {
  const [open, setOpen] = useState(false);
  const here = person.state === "here";
  const late = lateWords(person);
  return (
    <li class={person.state}>
      <button
        type="button"
        class="tick"
        aria-pressed={here}
        onClick={() => {
          tick(gymClass.id, person, here ? "expected" : "here", minutesLate(gymClass.date, gymClass.start, new Date()));
        }}
      >
        <span class="box" aria-hidden="true">
          {here ? (
            <svg viewBox="0 0 16 16">
              <path d="m2.5 8.5 3.5 3.5 7.5-8" />
            </svg>
          ) : null}
        </span>
        <span class="who">
          <strong>{person.name}</strong>
          {late || person.walk_in || person.state === "away" ? (
            <span class="small soft">
              {[late, person.walk_in ? "walked in" : null, person.state === "away" ? "not coming" : null]
                .filter(Boolean)
                .join(", ")}
            </span>
          ) : null}
          {person.told.map((action) => (
            <span key={action} class="told">
              {action}
            </span>
          ))}
        </span>
      </button>
      <button
        type="button"
        aria-expanded={open}
        onClick={() => {
          setOpen(!open);
        }}
      >
        Late<span class="unseen"> or not coming: {person.name}</span>
      </button>
      {open ? (
        <More
          person={person}
          classId={gymClass.id}
          done={() => {
            setOpen(false);
          }}
        />
      ) : null}
    </li>
  );
}

function WalkIn({ gymClass }: { readonly gymClass: GymClass }) {
  const [name, setName] = useState("");
  return (
    <form
      class="one-line"
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() === "") return;
        sender.send({
          path: walkInPath(gymClass.id),
          how: "POST",
          body: { name: name.trim(), late_s: minutesLate(gymClass.date, gymClass.start, new Date()) * 60 },
          words: `${name.trim()} walked in`,
        });
        setName("");
      }}
    >
      <Field label="Somebody new at the door: their name" value={name} change={setName} />
      <button>Add</button>
    </form>
  );
}

function List({ gymClass, people }: { readonly gymClass: GymClass; readonly people: readonly Arriving[] }) {
  const some = (state: ArrivalState) => people.some((each) => each.state === state);
  return (
    <>
      <WalkIn gymClass={gymClass} />
      <p role="status">
        <strong>{countWords(people)}</strong>
      </p>
      <ul class="plain ticks">
        {people.map((person) => (
          <Row key={person.id} person={person} gymClass={gymClass} />
        ))}
      </ul>
      {some("here") && some("expected") ? (
        <button
          type="button"
          onClick={() => {
            sender.send({
              path: `${arrivalPath(gymClass.id)}/nobody-else`,
              how: "POST",
              body: {},
              words: "Nobody else comes",
            });
          }}
        >
          Nobody else comes
        </button>
      ) : null}
    </>
  );
}

/** What the list does to the hour; while that is reckoned again, what was said stands back. */
function Effect({ words, old }: { readonly words: string; readonly old: boolean }) {
  return (
    <div>
      {old ? <Working words="The list has changed: reckoning what it does to the hour." /> : null}
      <MayBeOld old={old}>
        <Said weight="note">{words}</Said>
      </MayBeOld>
    </div>
  );
}

/** Who is at the door: ticked with one tap, told in action words; what the list does to the hour. */
export function ArrivalsView({ id }: { readonly id: string }) {
  const onItsWay = waiting(sender.outbox.value).some((letter) => isOfList(letter.path, id));
  const old = onItsWay || isOld(listEffectOf(id));
  return (
    <div class="floor">
      <FloorHead classId={id} title="Arrivals" />
      <LookedAt at={listEffectOf(id)} show={({ words }) => <Effect words={words} old={old} />} />
      <LookedAt
        at={classOf(id)}
        show={({ class: gymClass }) => (
          <LookedAt
            at={arrivalsOf(id)}
            show={(list) => <List gymClass={gymClass} people={listWith(list, sender.outbox.value, id)} />}
          />
        )}
      />
      <LineUp classId={id} open={false} />
      <Caution />
    </div>
  );
}

import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { classId, emptyClass, nextLike, withPlan, type ClassPlan } from "../../model/class_change.ts";
import type { GymClass, KeptClass } from "../../model/gym.ts";
import { keepPlan, makeClass } from "../../state/classes.ts";
import { boards, classes, classOf, gym, hall, people } from "../../state/gym.ts";
import { goTo } from "../../state/route.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { shortDay } from "../../ui/words.ts";
import { ClassPlanForm, type Known } from "./class_plan_form.tsx";
import { TakeAway } from "./take_away.tsx";
import "../people/people.css";
import "./class_plan.css";

/** Asks for what a class is made of. */
function WithKnown({ show }: { readonly show: (known: Known) => ComponentChildren }) {
  return (
    <LookedAt
      at={gym}
      show={({ today }) => (
        <LookedAt
          at={boards}
          show={(rows) => (
            <LookedAt
              at={people}
              show={(table) => (
                <LookedAt
                  at={hall}
                  show={(kept) => show({ boards: rows, people: table.rows, routes: kept.hall.routes, today })}
                />
              )}
            />
          )}
        />
      )}
    />
  );
}

function Fresh({ from }: { readonly from: GymClass }) {
  const keep = async (plan: ClassPlan) => {
    const id = classId(classes.now.value.value ?? [], plan.date ?? "", plan.start ?? "");
    const fault = await makeClass({ ...withPlan(from, plan), id });
    if (fault === null) goTo(`/class/${id}`);
    return fault;
  };
  return (
    <WithKnown
      show={(known) => (
        <ClassPlanForm
          from={from}
          known={known}
          act="Make the class"
          leaveAct="Make none"
          keep={keep}
          leave={() => {
            goTo("/");
          }}
        />
      )}
    />
  );
}

/** A class to make: empty, for the board that the address names, or like another one, a week later. */
export function NewClassView() {
  const asked = new URLSearchParams(location.search);
  const like = asked.get("like");
  return (
    <div class="stack">
      <h1>A new class</h1>
      <LookedAt
        at={classes}
        show={() =>
          like === null ? (
            <Fresh from={{ ...emptyClass, board_id: asked.get("board") ?? "" }} />
          ) : (
            <LookedAt at={classOf(like)} show={(kept) => <Fresh from={nextLike(kept.class)} />} />
          )
        }
      />
    </div>
  );
}

function Plan({ kept }: { readonly kept: KeptClass }) {
  // What it was when it was opened: others may go on changing it.
  const [before, setBefore] = useState(kept);
  const [opened, setOpened] = useState(0);
  const { id } = before.class;
  const back = () => {
    goTo(`/class/${id}`);
  };
  return (
    <WithKnown
      show={(known) => (
        <ClassPlanForm
          key={opened}
          from={before.class}
          known={known}
          act="Save"
          leave={back}
          keep={async (plan, over) => {
            const fault = await keepPlan(over ? kept : before, plan);
            if (fault === null) back();
            return fault;
          }}
          takeTheirs={() => {
            setBefore(kept);
            setOpened(opened + 1);
          }}
        >
          <TakeAway kept={kept} />
        </ClassPlanForm>
      )}
    />
  );
}

/** What a coach says of a class beforehand, to be changed. */
export function ClassPlanView({ id }: { readonly id: string }) {
  return (
    <div class="stack">
      <LookedAt
        at={classOf(id)}
        show={(kept) => (
          <>
            <div class="class-head">
              <h1>
                Change the class of {kept.class.date ? shortDay(kept.class.date) : kept.class.id}
                {kept.class.start ? `, ${kept.class.start}` : ""}
              </h1>
              <a class="button" href={`/classes/new?like=${id}`}>
                Again a week later
              </a>
            </div>
            <Plan kept={kept} />
          </>
        )}
      />
    </div>
  );
}

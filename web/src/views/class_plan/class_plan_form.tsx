import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { readPlan, writtenPlan, type ClassPlan, type PlanFaults, type WrittenPlan } from "../../model/class_change.ts";
import type { Fault } from "../../model/fault.ts";
import type { BoardRow, GymClass } from "../../model/gym.ts";
import type { Route } from "../../model/hall.ts";
import type { PersonRow } from "../../model/people.ts";
import { Choice } from "../../ui/choice.tsx";
import { Field } from "../../ui/field.tsx";
import { Said } from "../../ui/said.tsx";
import { SaveBar } from "../../ui/save_bar.tsx";
import { dayWords, sentence } from "../../ui/words.ts";
import { Outside } from "./outside.tsx";
import { WhoIsBooked } from "./who_is_booked.tsx";

/** What a class is made of: what the gym has of each. */
export interface Known {
  readonly boards: readonly BoardRow[];
  readonly people: readonly PersonRow[];
  readonly routes: readonly Route[];
  readonly today: string;
}

interface FormProps {
  readonly from: GymClass;
  readonly known: Known;
  readonly act: string;
  /** Keeps the plan, also `over` what somebody else changed; null if it was done, else why not. */
  readonly keep: (plan: ClassPlan, over: boolean) => Promise<Fault | null>;
  readonly leave: () => void;
  readonly leaveAct?: string;
  /** Shows the class as somebody else left it; only where it is kept already. */
  readonly takeTheirs?: () => void;
  /** What else can be done with the class, below what is said of it. */
  readonly children?: ComponentChildren;
}

interface PartProps {
  readonly written: WrittenPlan;
  readonly faults: PlanFaults;
  readonly set: (part: Partial<WrittenPlan>) => void;
}

function dayHint(date: string, today: string): string {
  if (date === "") return "";
  return `${dayWords(date)}${date < today ? ": that day is over, it will not be the next class" : ""}`;
}

function When({ written, faults, set, known }: PartProps & { readonly known: Known }) {
  const choices = known.boards.map((row) => [row.id, row.title || row.id] as const);
  return (
    <fieldset class="sheet stack">
      <legend>Day and board</legend>
      <div class="fields">
        <Field
          label="Day"
          type="date"
          value={written.date}
          hint={dayHint(written.date, known.today)}
          needed
          change={(date) => {
            set({ date });
          }}
          wrong={faults["date"] ?? null}
        />
        <Field
          label="Start"
          type="time"
          value={written.start}
          needed
          change={(start) => {
            set({ start });
          }}
          wrong={faults["start"] ?? null}
        />
        <Field
          label="Minutes"
          value={written.minutes}
          numeric
          hint="From start to end; empty: no end is set"
          change={(minutes) => {
            set({ minutes });
          }}
          wrong={faults["minutes"] ?? null}
        />
      </div>
      <Choice
        label="Board"
        value={written.board_id}
        choices={[["", "none yet"], ...choices]}
        change={(board_id) => {
          set({ board_id });
        }}
      />
      {choices.length === 0 ? (
        <p class="soft">
          No board is kept yet. <a href="/board">Chalk one</a>, or choose it here later.
        </p>
      ) : null}
    </fieldset>
  );
}

const boxes = [
  ["briefing", "Briefing"],
  ["change", "Change over"],
  ["scores", "Scores"],
  ["clean", "Clean up"],
] as const;

function Beside({ written, faults, set }: PartProps) {
  return (
    <fieldset class="sheet stack">
      <legend>Minutes beside the work</legend>
      <p class="soft small">What the board does not name. Empty: as long as the program reckons.</p>
      <div class="fields">
        {boxes.map(([id, words]) => (
          <Field
            key={id}
            label={words}
            value={written.boxes[id] ?? ""}
            numeric
            change={(typed) => {
              set({ boxes: { ...written.boxes, [id]: typed } });
            }}
            wrong={faults[id] ?? null}
          />
        ))}
      </div>
    </fieldset>
  );
}

function Wrong(props: { readonly fault: Fault; readonly keepMine: () => void; readonly takeTheirs: FormProps["takeTheirs"] }) {
  const { fault, keepMine, takeTheirs } = props;
  return (
    <Said weight="problem" alert>
      <p>Not saved. {sentence(fault.text)}</p>
      {fault.status === 409 && takeTheirs ? (
        <div class="row">
          <button type="button" onClick={keepMine}>
            Keep mine
          </button>
          <button type="button" onClick={takeTheirs}>
            Take theirs
          </button>
        </div>
      ) : null}
    </Said>
  );
}

/** Everything that a coach says of a class beforehand, to be kept as a whole. */
export function ClassPlanForm({ from, known, act, keep, leave, leaveAct, takeTheirs, children }: FormProps) {
  const [written, setWritten] = useState(writtenPlan(from));
  const [faults, setFaults] = useState<PlanFaults>({});
  const [fault, setFault] = useState<Fault | null>(null);
  const [busy, setBusy] = useState(false);
  const set = (part: Partial<WrittenPlan>) => {
    setWritten((now) => ({ ...now, ...part }));
    setFaults({});
  };
  const save = async (over: boolean) => {
    const read = readPlan(written);
    setFaults(read.faults);
    if (Object.keys(read.faults).length > 0) return;
    setBusy(true);
    const failed = await keep(read.plan, over);
    setBusy(false);
    setFault(failed);
  };
  const wrong = Object.keys(faults).length;
  return (
    <form
      class="stack class-plan"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void save(false);
      }}
    >
      <div class="columns">
        <div class="stack">
          <When written={written} faults={faults} set={set} known={known} />
          <Outside written={written} faults={faults} routes={known.routes} set={set} />
          <Beside written={written} faults={faults} set={set} />
        </div>
        <WhoIsBooked
          rows={known.people}
          date={written.date}
          booked={written.booked}
          change={(booked) => {
            set({ booked });
          }}
        />
      </div>
      {children}
      <SaveBar label="This class" act={act} busy={busy} leave={leave} {...(leaveAct === undefined ? {} : { leaveAct })}>
        {fault ? <Wrong fault={fault} keepMine={() => void save(true)} takeTheirs={takeTheirs} /> : null}
        {wrong > 0 ? (
          <Said weight="problem" alert>
            Not saved. {Object.values(faults).join(" ")}
          </Said>
        ) : null}
      </SaveBar>
    </form>
  );
}

import { useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import type { KeptClass, PlaceFault } from "../../model/gym.ts";
import type { Place } from "../../model/hall.ts";
import { classOf } from "../../state/gym.ts";
import { keepFaults } from "../../state/classes.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Said } from "../../ui/said.tsx";
import { dayWords, sentence } from "../../ui/words.ts";
import { nameIn, type Names } from "./places_table.tsx";

/** The faults with so many places of a kind out; none out is no fault. */
export function withOut(faults: readonly PlaceFault[], equipment: string, out: number): readonly PlaceFault[] {
  const others = faults.filter((each) => each.equipment !== equipment);
  const before = faults.find((each) => each.equipment === equipment);
  return out <= 0 ? others : [...others, { equipment, out, text: before?.text ?? "" }];
}

function FaultRow(props: { readonly place: Place; readonly out: number; readonly name: string; readonly set: (out: number) => void }) {
  const { place, out, name, set } = props;
  return (
    <li class="fault">
      <span>{name}</span>
      <button
        type="button"
        aria-label={`One ${name} works again`}
        disabled={out === 0}
        onClick={() => {
          set(out - 1);
        }}
      >
        −
      </button>
      <span class={out > 0 ? "out some" : "out"} aria-live="polite">
        {out === 0 ? `all ${place.count} work` : `${out} of ${place.count} out`}
      </span>
      <button
        type="button"
        aria-label={`One ${name} is out of order`}
        disabled={out >= place.count}
        onClick={() => {
          set(out + 1);
        }}
      >
        +
      </button>
    </li>
  );
}

function FaultList({ kept, places, names }: { readonly kept: KeptClass; readonly places: readonly Place[]; readonly names: Names }) {
  const [fault, setFault] = useState<Fault | null>(null);
  const faults = kept.class.faults;
  const set = async (equipment: string, out: number) => {
    setFault(await keepFaults(kept, withOut(faults, equipment, out)));
  };
  const totalOut = (equipment: string) =>
    faults.filter((each) => each.equipment === equipment).reduce((sum, each) => sum + each.out, 0);
  return (
    <section class="sheet" aria-labelledby="faults">
      <h2 id="faults">Out of order</h2>
      <p class="soft">
        For the next class{kept.class.date ? `, ${dayWords(kept.class.date)}` : ""}. It counts at once in every rehearsal of
        it.
      </p>
      {fault ? (
        <Said weight="problem" alert>
          {sentence(fault.text)}
        </Said>
      ) : null}
      <ul class="plain">
        {places.map((place) => (
          <FaultRow
            key={place.equipment}
            place={place}
            name={nameIn(names, place.equipment)}
            out={totalOut(place.equipment)}
            set={(out) => void set(place.equipment, out)}
          />
        ))}
      </ul>
      {faults.some((each) => each.text) ? (
        <p class="small soft">
          {faults.filter((each) => each.text).map((each) => `${nameIn(names, each.equipment)}: ${each.text}`).join(". ")}.
        </p>
      ) : null}
    </section>
  );
}

/** What does not work, for the next class. */
export function Faults(props: { readonly classId: string; readonly places: readonly Place[]; readonly names: Names }) {
  return <LookedAt at={classOf(props.classId)} show={(kept) => <FaultList kept={kept} places={props.places} names={props.names} />} />;
}

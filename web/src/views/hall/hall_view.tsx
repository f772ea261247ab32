import { useState } from "preact/hooks";
import type { Equipment } from "../../model/catalogue.ts";
import type { Fault } from "../../model/fault.ts";
import type { Hall, KeptHall } from "../../model/hall.ts";
import { equipment, gym, hall } from "../../state/gym.ts";
import { keepHall } from "../../state/hall.ts";
import { NumberCell } from "../../ui/cell.tsx";
import { Field } from "../../ui/field.tsx";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Said } from "../../ui/said.tsx";
import { SaveBar } from "../../ui/save_bar.tsx";
import { EmergencyForm } from "./emergency_form.tsx";
import { Faults } from "./faults.tsx";
import { KitTable, PlacesTable } from "./places_table.tsx";
import { RoutesTable } from "./routes_table.tsx";
import { sentence } from "../../ui/words.ts";
import "./hall.css";

function HallPage({ kept, known }: { readonly kept: KeptHall; readonly known: readonly Equipment[] }) {
  const [draft, setDraft] = useState<Hall | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const shown = draft ?? kept.hall;
  const names = new Map(known.map((each) => [each.id, each.name]));
  const set = (part: Partial<Hall>) => {
    setDraft({ ...shown, ...part });
  };
  const save = async () => {
    const failed = await keepHall(shown, kept.version);
    setFault(failed);
    if (!failed) setDraft(null);
  };
  return (
    <>
      <div class="hall-columns">
        <div class="stack">
          <LookedAt
            at={gym}
            show={({ next_class }) =>
              next_class === null ? null : <Faults classId={next_class} places={kept.hall.places} names={names} />
            }
          />
          <PlacesTable
            list={shown.places}
            equipment={known}
            names={names}
            change={(places) => {
              set({ places });
            }}
          />
          <section class="sheet stack" aria-labelledby="room">
            <h2 id="room">Room</h2>
            <Field
              label="Name of the gym"
              value={shown.name}
              change={(name) => {
                set({ name });
              }}
            />
            <label class="beside">
              Floor
              <NumberCell
                label="Floor, square metres"
                value={shown.floor_m2}
                mayBeEmpty
                change={(floor_m2) => {
                  set({ floor_m2 });
                }}
              />
              m²
            </label>
          </section>
        </div>
        <RoutesTable
          list={shown.routes}
          change={(routes) => {
            set({ routes });
          }}
        />
        <KitTable
          list={shown.kit}
          equipment={known}
          names={names}
          change={(kit) => {
            set({ kit });
          }}
        />
      </div>
      {draft ? (
        <SaveBar
          label="Changes of the hall"
          save={() => void save()}
          leave={() => {
            setDraft(null);
            setFault(null);
          }}
        >
          {fault ? (
            <Said weight="problem" alert>
              Not saved. {sentence(fault.text)}
            </Said>
          ) : (
            <span>Changed, not saved yet.</span>
          )}
        </SaveBar>
      ) : null}
    </>
  );
}

/** The room: places, kit, routes, and what is out of order. */
export function HallView() {
  return (
    <div class="stack">
      <h1>Hall</h1>
      <LookedAt
        at={equipment}
        show={(known) => <LookedAt at={hall} show={(kept) => <HallPage kept={kept} known={known} />} />}
      />
      <EmergencyForm />
    </div>
  );
}

import type { Equipment } from "../../model/catalogue.ts";
import type { KitLot, Place } from "../../model/hall.ts";
import { NumberCell } from "../../ui/cell.tsx";
import { idWords, plainNumber } from "../../ui/words.ts";

export type Names = ReadonlyMap<string, string>;
export const nameIn = (names: Names, id: string): string => names.get(id) ?? idWords(id);

/** The list with the element at `index` replaced, or taken out where it is null. */
export function replaced<T>(list: readonly T[], index: number, by: T | null): readonly T[] {
  return list.flatMap((each, at) => (at === index ? (by === null ? [] : [by]) : [each]));
}

function AddOne(props: { readonly label: string; readonly choices: readonly Equipment[]; readonly add: (id: string) => void }) {
  if (props.choices.length === 0) return null;
  return (
    <label class="beside small">
      {props.label}
      <select
        value=""
        onChange={(event) => {
          if (event.currentTarget.value) props.add(event.currentTarget.value);
        }}
      >
        <option value="">choose</option>
        {props.choices.map((each) => (
          <option key={each.id} value={each.id}>
            {each.name}
          </option>
        ))}
      </select>
    </label>
  );
}

function TakeOut({ what, act }: { readonly what: string; readonly act: () => void }) {
  return (
    <button type="button" class="bare" onClick={act}>
      Take out<span class="unseen"> {what}</span>
    </button>
  );
}

interface TableProps<T> {
  readonly list: readonly T[];
  readonly change: (list: readonly T[]) => void;
  readonly equipment: readonly Equipment[];
  readonly names: Names;
}

/** What people queue for: one person holds one at a time. */
export function PlacesTable({ list, change, equipment, names }: TableProps<Place>) {
  const choices = equipment.filter(
    (each) => ["fixed", "machine", "room"].includes(each.kind) && !list.some((place) => place.equipment === each.id),
  );
  return (
    <section class="sheet" aria-labelledby="places">
      <h2 id="places">Places</h2>
      <table>
        <thead class="unseen">
          <tr>
            <th>Place</th>
            <th>How many</th>
            <th>Take out</th>
          </tr>
        </thead>
        <tbody>
          {list.map((place, index) => (
            <tr key={place.equipment}>
              <th scope="row">{nameIn(names, place.equipment)}</th>
              <td class="number">
                <NumberCell
                  label={`How many: ${nameIn(names, place.equipment)}`}
                  value={place.count}
                  change={(count) => {
                    change(replaced(list, index, { ...place, count: count ?? 0 }));
                  }}
                />
              </td>
              <td>
                <TakeOut
                  what={nameIn(names, place.equipment)}
                  act={() => {
                    change(replaced(list, index, null));
                  }}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <AddOne
        label="Add a place"
        choices={choices}
        add={(id) => {
          change([...list, { equipment: id, count: 1 }]);
        }}
      />
    </section>
  );
}

function sizeWords(lot: KitLot): string {
  if (lot.kg !== null) return `${plainNumber(lot.kg)} kg`;
  if (lot.height_cm !== null) return `${plainNumber(lot.height_cm)} cm`;
  return lot.size;
}

function LotRow(props: { readonly lot: KitLot; readonly names: Names; readonly change: (lot: KitLot | null) => void }) {
  const { lot, change } = props;
  const name = nameIn(props.names, lot.equipment);
  const sized = lot.kg !== null ? "kg" : lot.height_cm !== null ? "height_cm" : null;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td class="number size">
        {sized === null ? (
          lot.size
        ) : (
          <>
            <NumberCell
              label={`${sized === "kg" ? "Kilograms" : "Centimetres"}: ${name} ${sizeWords(lot)}`}
              step={0.5}
              value={lot[sized]}
              change={(size) => {
                change({ ...lot, [sized]: size ?? lot[sized] });
              }}
            />
            {sized === "kg" ? "kg" : "cm"}
          </>
        )}
      </td>
      <td class="number">
        <NumberCell
          label={`How many: ${name} ${sizeWords(lot)}`}
          value={lot.count}
          change={(count) => {
            change({ ...lot, count: count ?? 0 });
          }}
        />
      </td>
      <td>
        <TakeOut
          what={`${name} ${sizeWords(lot)}`}
          act={() => {
            change(null);
          }}
        />
      </td>
    </tr>
  );
}

const byMass = ["kettlebell", "dumbbell", "med-ball", "sandbag", "barbell", "plates"];

/** Things that are carried to where they are used, in lots of one size. */
export function KitTable({ list, change, equipment, names }: TableProps<KitLot>) {
  return (
    <section class="sheet" aria-labelledby="kit">
      <h2 id="kit">Kit</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Kit</th>
            <th scope="col" class="number">
              Size
            </th>
            <th scope="col" class="number">
              How many
            </th>
            <th>
              <span class="unseen">Take out</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {list.map((lot, index) => (
            <LotRow
              key={index}
              lot={lot}
              names={names}
              change={(changed) => {
                change(replaced(list, index, changed));
              }}
            />
          ))}
        </tbody>
      </table>
      <AddOne
        label="Add kit"
        choices={equipment.filter((each) => each.kind === "loose")}
        add={(id) => {
          const kg = byMass.includes(id) ? 10 : null;
          const height_cm = id === "box" ? 50 : null;
          change([...list, { equipment: id, kg, height_cm, size: "", count: 1 }]);
        }}
      />
    </section>
  );
}

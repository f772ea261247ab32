import type { Brief, SetOut } from "../../model/brief.ts";
import type { PlaceFault } from "../../model/gym.ts";
import type { Rehearsal } from "../../model/rehearsal.ts";
import { count, idWords, plainNumber } from "../../ui/words.ts";

function sizeWords(lot: SetOut): string {
  if (lot.kg !== null) return ` ${plainNumber(lot.kg)} kg`;
  return lot.height_cm !== null ? ` ${plainNumber(lot.height_cm)} cm` : "";
}

function Lot({ lot }: { readonly lot: SetOut }) {
  const short = lot.needed - lot.available;
  return (
    <tr class={short > 0 ? "short" : undefined}>
      <th scope="row">
        {lot.name}
        {sizeWords(lot)}
      </th>
      <td class="number">{Math.min(lot.needed, lot.available)}</td>
      <td>{short > 0 ? `${short} short: ${lot.needed} needed at once` : ""}</td>
    </tr>
  );
}

function Places({ rehearsal, faults }: { readonly rehearsal: Rehearsal; readonly faults: readonly PlaceFault[] }) {
  if (rehearsal.places.length === 0) return null;
  return (
    <>
      <h3>Places in use</h3>
      <ul class="plain tight">
        {rehearsal.places.map((place) => {
          const fault = faults.find((each) => each.equipment === place.place);
          return (
            <li key={place.place}>
              {place.name || idWords(place.place)}: {count(place.count, "place", "places")}
              {fault ? <strong>{`, ${fault.out} out of order${fault.text ? ` (${fault.text})` : ""}`}</strong> : null}
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** What has to lie ready before the class begins. */
export function SetOutList(props: {
  readonly brief: Brief;
  readonly rehearsal: Rehearsal | null;
  readonly faults: readonly PlaceFault[];
}) {
  const lots = props.brief.set_out;
  return (
    <section class="sheet stack" aria-labelledby="set-out">
      <h2 id="set-out">Set out</h2>
      {lots.length === 0 ? (
        <p class="soft">No loose kit.</p>
      ) : (
        <table class="lots">
          <thead class="unseen">
            <tr>
              <th>Kit</th>
              <th>How many</th>
              <th>Remark</th>
            </tr>
          </thead>
          <tbody>
            {lots.map((lot) => (
              <Lot key={`${lot.equipment} ${String(lot.kg)} ${String(lot.height_cm)}`} lot={lot} />
            ))}
          </tbody>
        </table>
      )}
      {props.rehearsal ? <Places rehearsal={props.rehearsal} faults={props.faults} /> : null}
    </section>
  );
}

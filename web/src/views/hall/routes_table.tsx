import { shapes, type Route } from "../../model/hall.ts";
import { NumberCell, TextCell, TickCell } from "../../ui/cell.tsx";
import { replaced } from "./places_table.tsx";

const shapeWords: Readonly<Record<Route["shape"], string>> = {
  "out-and-back": "out and back",
  loop: "loop",
  shuttle: "shuttle",
};

function RouteCard({ route, change }: { readonly route: Route; readonly change: (route: Route | null) => void }) {
  const name = route.name || route.id;
  const set = (part: Partial<Route>) => {
    change({ ...route, ...part });
  };
  const number = (label: string, key: "lap_m" | "door_s" | "climb_m") => (
    <label class="field">
      <span class="label">{label}</span>
      <NumberCell
        label={`${label}: ${name}`}
        value={route[key]}
        change={(value) => {
          set({ [key]: value ?? 0 });
        }}
      />
    </label>
  );
  const tick = (label: string, key: "dark_ok" | "wet_ok" | "indoor") => (
    <span class="beside">
      <TickCell
        label={`${label}: ${name}`}
        value={route[key]}
        change={(value) => {
          set({ [key]: value });
        }}
      />
      {label}
    </span>
  );
  return (
    <li class="route">
      <div class="fields">
        <div class="wide-field">
          <label class="field">
            <span class="label">Name</span>
            <TextCell
              label={`Name of the route ${route.id}`}
              value={route.name}
              change={(text) => {
                set({ name: text });
              }}
            />
          </label>
          <button
            type="button"
            class="bare"
            onClick={() => {
              change(null);
            }}
          >
            Take out<span class="unseen"> {name}</span>
          </button>
        </div>
        {number("Lap, m", "lap_m")}
        <label class="field">
          <span class="label">Shape</span>
          <select
            value={route.shape}
            aria-label={`Shape: ${name}`}
            onChange={(event) => {
              const chosen = shapes.find((each) => each === event.currentTarget.value);
              if (chosen) set({ shape: chosen });
            }}
          >
            {shapes.map((shape) => (
              <option key={shape} value={shape}>
                {shapeWords[shape]}
              </option>
            ))}
          </select>
        </label>
        {number("Door, s", "door_s")}
        {number("Climb, m", "climb_m")}
        <label class="field">
          <span class="label">People</span>
          <NumberCell
            label={`At most so many people: ${name}`}
            value={route.max_people}
            mayBeEmpty
            change={(value) => {
              set({ max_people: value });
            }}
          />
        </label>
      </div>
      <div class="row">
        {tick("when dark", "dark_ok")}
        {tick("when wet", "wet_ok")}
        {tick("indoors", "indoor")}
      </div>
      {route.hazards.length > 0 ? <p class="small soft">Mind: {route.hazards.join("; ")}.</p> : null}
    </li>
  );
}

function fresh(list: readonly Route[]): Route {
  let n = list.length + 1;
  while (list.some((each) => each.id === `route-${n}`)) ++n;
  return {
    id: `route-${n}`, name: "", lap_m: 200, shape: "out-and-back", dark_ok: true, wet_ok: true, indoor: false,
    max_people: null, climb_m: 0, door_s: 0, use: "", hazards: [],
  };
}

/** Where people run: how long, how far to the door, and whether it goes in the dark and in the wet. */
export function RoutesTable({ list, change }: { readonly list: readonly Route[]; readonly change: (list: readonly Route[]) => void }) {
  return (
    <section class="sheet" aria-labelledby="routes">
      <h2 id="routes">Routes</h2>
      <ul class="plain routes">
        {list.map((route, index) => (
          <RouteCard
            key={route.id}
            route={route}
            change={(changed) => {
              change(replaced(list, index, changed));
            }}
          />
        ))}
      </ul>
      <button
        type="button"
        onClick={() => {
          change([...list, fresh(list)]);
        }}
      >
        Add a route
      </button>
    </section>
  );
}

import type { PlanFaults, WrittenPlan } from "../../model/class_change.ts";
import type { Route } from "../../model/hall.ts";
import { Field } from "../../ui/field.tsx";

interface OutsideProps {
  readonly written: WrittenPlan;
  readonly faults: PlanFaults;
  readonly routes: readonly Route[];
  readonly set: (part: Partial<WrittenPlan>) => void;
}

function Tick(props: { readonly label: string; readonly value: boolean; readonly change: (value: boolean) => void }) {
  return (
    <label class="beside">
      <input
        type="checkbox"
        checked={props.value}
        onChange={(event) => {
          props.change(event.currentTarget.checked);
        }}
      />
      {props.label}
    </label>
  );
}

function ClosedRoutes({ routes, closed, change }: { readonly routes: readonly Route[]; readonly closed: readonly string[]; readonly change: (closed: readonly string[]) => void }) {
  if (routes.length === 0) return null;
  return (
    <div role="group" aria-label="Routes that are closed">
      <p class="small">Closed that day</p>
      <div class="row ticks">
        {routes.map((route) => (
          <Tick
            key={route.id}
            label={route.name || route.id}
            value={closed.includes(route.id)}
            change={(on) => {
              change(on ? [...closed, route.id] : closed.filter((each) => each !== route.id));
            }}
          />
        ))}
      </div>
    </div>
  );
}

/** The weather of a class, and whether it stays indoors. */
export function Outside({ written, faults, routes, set }: OutsideProps) {
  const { weather } = written;
  const setWeather = (part: Partial<WrittenPlan["weather"]>) => {
    set({ weather: { ...weather, ...part } });
  };
  return (
    <fieldset class="sheet stack">
      <legend>Weather and light</legend>
      <div class="row ticks">
        <Tick label="Rain" value={weather.rain} change={(rain) => { setWeather({ rain }); }} />
        <Tick label="Dark outside" value={!weather.daylight} change={(dark) => { setWeather({ daylight: !dark }); }} />
        <Tick label="All indoors" value={written.indoors} change={(indoors) => { set({ indoors }); }} />
      </div>
      <ClosedRoutes
        routes={routes}
        closed={weather.closed_routes}
        change={(closed_routes) => {
          setWeather({ closed_routes });
        }}
      />
      <div class="fields">
        <Field
          label="Temperature, °C"
          value={written.temp_c}
          change={(temp_c) => {
            set({ temp_c });
          }}
          wrong={faults["temp_c"] ?? null}
        />
        <Field
          label="Wet-bulb globe, °C"
          value={written.wbgt_c}
          hint="Where it is measured; may stay empty"
          change={(wbgt_c) => {
            set({ wbgt_c });
          }}
          wrong={faults["wbgt_c"] ?? null}
        />
      </div>
      <Field
        label="In words (may stay empty)"
        value={weather.text}
        change={(text) => {
          setWeather({ text });
        }}
      />
    </fieldset>
  );
}

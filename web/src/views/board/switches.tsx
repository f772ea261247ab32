import type { ClassRow } from "../../model/gym.ts";
import type { PlaceUse } from "../../model/rehearsal.ts";
import { shortDay } from "../../ui/words.ts";
import type { Look } from "./board_model.ts";

interface SwitchesProps {
  readonly look: Look;
  readonly gymClass: ClassRow | null;
  readonly classes: readonly ClassRow[];
  /** How many the last rehearsal had, walk-ins among them. */
  readonly heads: number | null;
  readonly places: readonly PlaceUse[];
  readonly change: (change: Partial<Look>) => void;
}

const mostHeads = 200;

/** A class in words: day, hour, who is booked. */
export function classWords(row: ClassRow): string {
  const day = row.date ? shortDay(row.date) : row.id;
  return `${day}${row.start ? ` ${row.start}` : ""}, ${row.booked} booked`;
}

function Heads({ look, gymClass, heads, change }: Omit<SwitchesProps, "classes" | "places">) {
  const shown = look.heads ?? heads ?? gymClass?.booked ?? 0;
  const set = (value: number): void => {
    if (Number.isInteger(value) && value >= 1 && value <= mostHeads) change({ heads: value });
  };
  return (
    <div class={`switch${look.heads !== null ? " switch-on" : ""}`} role="group" aria-label="How many come">
      <label for="heads">Heads</label>
      <span class="stepper">
        <button
          type="button"
          aria-label="One fewer"
          disabled={shown <= 1}
          onClick={() => {
            set(shown - 1);
          }}
        >
          −
        </button>
        <input
          id="heads"
          type="number"
          inputMode="numeric"
          min={1}
          max={mostHeads}
          value={shown}
          onFocus={(event) => {
            event.currentTarget.select();
          }}
          onInput={(event) => {
            set(event.currentTarget.valueAsNumber);
          }}
        />
        <button
          type="button"
          aria-label="One more"
          onClick={() => {
            set(shown + 1);
          }}
        >
          +
        </button>
      </span>
      {look.heads !== null && (
        <button
          type="button"
          class="as-booked"
          onClick={() => {
            change({ heads: null });
          }}
        >
          as booked
        </button>
      )}
    </div>
  );
}

function Rain({ look, change }: Pick<SwitchesProps, "look" | "change">) {
  return (
    <button
      type="button"
      class={`switch switch-toggle${look.rain ? " switch-on" : ""}`}
      aria-pressed={look.rain}
      onClick={() => {
        change({ rain: !look.rain });
      }}
    >
      <span class="switch-name">Rain</span>
      <span class="switch-state">{look.rain ? "all indoors" : "dry"}</span>
    </button>
  );
}

function Broken({ look, places, change }: Pick<SwitchesProps, "look" | "places" | "change">) {
  const out = look.out;
  const most = places.find((each) => each.place === out?.place)?.count ?? 0;
  const left = out ? Math.max(0, most) : 0;
  return (
    <div class={`switch${out ? " switch-on" : ""}`} role="group" aria-label="A place out of use">
      <label for="broken">Broken</label>
      <select
        id="broken"
        value={out?.place ?? ""}
        onChange={(event) => {
          const place = event.currentTarget.value;
          change({ out: place ? { place, count: 1 } : null });
        }}
      >
        <option value="">nothing</option>
        {out && !places.some((each) => each.place === out.place) && <option value={out.place}>{out.place}</option>}
        {places.map((each) => (
          <option key={each.place} value={each.place}>
            {each.name}
          </option>
        ))}
      </select>
      {out && (
        <span class="stepper">
          <button
            type="button"
            aria-label="One fewer out"
            disabled={out.count <= 1}
            onClick={() => {
              change({ out: { place: out.place, count: out.count - 1 } });
            }}
          >
            −
          </button>
          <output aria-label="Places out">{out.count} out</output>
          <button
            type="button"
            aria-label="One more out"
            disabled={left <= 0}
            onClick={() => {
              change({ out: { place: out.place, count: out.count + 1 } });
            }}
          >
            +
          </button>
        </span>
      )}
    </div>
  );
}

/** What if: how many come, rain, a place broken. Each rehearses again at once; nothing of it is kept. */
export function Switches(props: SwitchesProps) {
  const { look, gymClass, classes, change } = props;
  return (
    <div class="switches">
      <Heads {...props} />
      <Rain {...props} />
      <Broken {...props} />
      <details class="more">
        <summary>{gymClass ? `For ${classWords(gymClass)}` : "For everybody of the gym, on no date"} · more</summary>
        <div class="more-fields">
          <label>
            Class
            <select
              value={look.classId ?? ""}
              onChange={(event) => {
                change({ classId: event.currentTarget.value || null, heads: null });
              }}
            >
              <option value="">everybody, no date</option>
              {classes.map((row) => (
                <option key={row.id} value={row.id}>
                  {classWords(row)}
                </option>
              ))}
            </select>
          </label>
          <label>
            Runs
            <select
              value={String(look.runs)}
              onChange={(event) => {
                change({ runs: Number(event.currentTarget.value) });
              }}
            >
              {[50, 200, 1000].map((runs) => (
                <option key={runs} value={String(runs)}>
                  {runs}
                </option>
              ))}
            </select>
          </label>
          <label>
            Seed
            <input
              type="number"
              min={0}
              value={look.seed}
              onChange={(event) => {
                const seed = event.currentTarget.valueAsNumber;
                if (Number.isInteger(seed) && seed >= 0) change({ seed });
              }}
            />
          </label>
        </div>
      </details>
    </div>
  );
}

import { useId } from "preact/hooks";

/** What a tap on one of the buttons does. */
export interface Stop {
  readonly words: string;
  readonly says: string;
  /** Null: there is nothing further. */
  readonly to: number | null;
}

/** Small and large steps either way, never below nothing. */
export function evenStops(value: number, [small, large]: readonly [small: number, large: number]): readonly Stop[] {
  const stop = (by: number): Stop => ({
    words: by < 0 ? `−${-by}` : `+${by}`,
    says: `${by < 0 ? "less" : "more"} by ${Math.abs(by)}`,
    to: Math.max(0, Math.round((value + by) * 100) / 100),
  });
  return (large === small ? [-small, small] : [-large, -small, small, large]).map(stop);
}

/** The next lot of the hall's kit either way. */
export function lotStops(next: (by: number) => number | null): readonly Stop[] {
  return [-1, 1].map((by): Stop => {
    const to = next(by);
    const way = by < 0 ? "less" : "more";
    const sign = by < 0 ? "↓" : "↑";
    return to === null ? { words: sign, says: `none ${way} here`, to } : { words: `${sign} ${to}`, says: `${way}: ${to}`, to };
  });
}

/** A number that is mostly right: steps beside it, and a field for everything else. */
export function Stepper(props: {
  readonly label: string;
  readonly value: number;
  /** As many below the value, which stand before it, as above. */
  readonly stops: readonly Stop[];
  readonly change: (value: number) => void;
}) {
  const id = useId();
  const { label, value, stops } = props;
  const below = stops.length / 2;
  const buttons = (some: readonly Stop[]) =>
    some.map((stop) => (
      <button
        key={stop.says}
        type="button"
        aria-label={`${label}: ${stop.says}`}
        disabled={stop.to === null}
        onClick={() => {
          if (stop.to !== null) props.change(stop.to);
        }}
      >
        {stop.words}
      </button>
    ));
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <div class="stepper">
        {buttons(stops.slice(0, below))}
        <input
          id={id}
          inputMode="decimal"
          value={String(value)}
          onInput={(event) => {
            const typed = Number(event.currentTarget.value.replace(",", "."));
            if (Number.isFinite(typed) && typed >= 0) props.change(typed);
          }}
        />
        {buttons(stops.slice(below))}
      </div>
    </div>
  );
}

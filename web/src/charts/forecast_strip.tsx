import type { PastScore } from "../model/brief.ts";

const width = 132;
const height = 22;
const edge = 8;

interface Places {
  readonly low: number;
  readonly high: number;
  readonly value: number | null;
  /** What other days give around the value. */
  readonly days: readonly [number, number] | null;
}

/** Where forecast and fact lie on one small axis, 0 to 1; the axis reaches a little beyond both. */
export function placesOf(low: number, high: number, value: number | null, days: readonly [number, number] | null = null): Places {
  const all = [low, high, ...(value === null ? [] : [value]), ...(days ?? [])];
  const from = Math.min(...all);
  const span = Math.max(...all) - from || 1;
  const at = (each: number) => (each - from) / span;
  return { low: at(low), high: at(high), value: value === null ? null : at(value), days: days && [at(days[0]), at(days[1])] };
}

/** The forecast as a band, the score as a dot with the luck of days as whiskers; the table says the same in words. */
export function ForecastStrip({ past }: { readonly past: PastScore }) {
  if (!past.forecast) return null;
  const places = placesOf(past.forecast.p10, past.forecast.p90, past.value, past.days);
  const x = (at: number) => edge + at * (width - 2 * edge);
  return (
    <svg class="forecast-strip" width={width} height={height} aria-hidden="true" focusable="false">
      <line x1={edge} x2={width - edge} y1={height / 2} y2={height / 2} class="strip-line" />
      <rect x={x(places.low) - 2} width={x(places.high) - x(places.low) + 4} y={height / 2 - 6} height={12} rx={3} class="strip-band" />
      {places.days === null ? null : (
        <path class="strip-days" d={`M${String(x(places.days[0]))} 4v14M${String(x(places.days[1]))} 4v14M${String(x(places.days[0]))} 11H${String(x(places.days[1]))}`} />
      )}
      {places.value === null ? null : <circle cx={x(places.value)} cy={height / 2} r={5.5} class="strip-dot" />}
    </svg>
  );
}

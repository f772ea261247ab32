import type { PastScore } from "../model/brief.ts";

const width = 132;
const height = 22;
const edge = 8;

/** Where forecast and fact lie on one small axis, 0 to 1; the axis reaches a little beyond both. */
export function placesOf(low: number, high: number, value: number | null): { readonly low: number; readonly high: number; readonly value: number | null } {
  const all = value === null ? [low, high] : [low, high, value];
  const from = Math.min(...all);
  const span = Math.max(...all) - from || 1;
  const at = (each: number) => (each - from) / span;
  return { low: at(low), high: at(high), value: value === null ? null : at(value) };
}

/** The forecast as a band and the score as a dot; for the eye only, the table says the same in words. */
export function ForecastStrip({ past }: { readonly past: PastScore }) {
  if (!past.forecast) return null;
  const places = placesOf(past.forecast.p10, past.forecast.p90, past.value);
  const x = (at: number) => edge + at * (width - 2 * edge);
  return (
    <svg class="forecast-strip" width={width} height={height} aria-hidden="true" focusable="false">
      <line x1={edge} x2={width - edge} y1={height / 2} y2={height / 2} class="strip-line" />
      <rect x={x(places.low) - 2} width={x(places.high) - x(places.low) + 4} y={height / 2 - 6} height={12} rx={3} class="strip-band" />
      {places.value === null ? null : <circle cx={x(places.value)} cy={height / 2} r={5.5} class="strip-dot" />}
    </svg>
  );
}

import type { Forecast, PastScore } from "../model/brief.ts";
import { clockText } from "./words.ts";

/** A number in the forecast's measure as it stands on a score sheet. */
export function measureText(forecast: Forecast, value: number): string {
  switch (forecast.measure) {
    case "seconds":
      return clockText(value);
    case "reps": {
      const round = forecast.reps_per_round;
      if (round < 1) return String(Math.round(value));
      const full = Math.floor(value / round + 1e-9);
      return `${full}+${Math.floor(value - full * round + 1e-9)}`;
    }
    case "kg":
      return `${value.toFixed(1)} kg`;
    case "m":
      return `${Math.round(value)} m`;
    case "kcal":
      return `${Math.round(value)} kcal`;
  }
}

/** Nine in ten would be too sure of a range that four in five scores fall into. */
export function verdictOf(past: PastScore): "as forecast" | "better" | "less" | null {
  const { forecast, value } = past;
  if (!forecast || value === null) return null;
  if (value >= forecast.p10 && value <= forecast.p90) return "as forecast";
  const lowerIsBetter = forecast.measure === "seconds";
  return value < forecast.p10 === lowerIsBetter ? "better" : "less";
}

/** How many of the scores fell into their range, in words; null where none can be compared. */
export function coverageWords(scores: readonly PastScore[]): string | null {
  const told = scores.filter((each) => each.flag === "" && verdictOf(each) !== null);
  if (told.length === 0) return null;
  const within = told.filter((each) => verdictOf(each) === "as forecast").length;
  return `${within} of ${told.length} fell into the range that should hold four in five.`;
}

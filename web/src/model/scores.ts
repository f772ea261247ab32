import { listOf, number, objectOf, orNull, text, wordOf, type Decoded } from "./decode.ts";
import type { Outbox } from "./outbox.ts";
import { measure } from "./rehearsal.ts";

const line = objectOf({
  number,
  version: number,
  person: text,
  piece: text,
  score: text,
  done_as: text,
  effort: orNull(number),
  flag: text,
  entered_by: text,
  saved_by: orNull(text),
  saved_at: orNull(text),
});
/** A line of the score sheet as it is kept. */
export type ScoreLine = Decoded<typeof line>;
export const classScores = listOf(line);

/** What a line said before, the newest first. */
export const beforeIt = (versions: readonly ScoreLine[], line: ScoreLine): readonly ScoreLine[] =>
  versions.filter((each) => each.version < line.version).sort((a, b) => b.version - a.version);

/** What a line says from now on; `version` is that of the line that was looked at. */
export interface ScoreChange {
  readonly version: number;
  readonly person: string;
  readonly piece: string;
  readonly score: string;
  readonly done_as: string;
  readonly effort?: number;
  readonly flag: string;
}

export const forecast = objectOf({ measure, p10: number, p50: number, p90: number, reps_per_round: number });
export type ScoreForecast = Decoded<typeof forecast>;

export const form = wordOf("time", "rounds", "reps", "load", "distance", "kcal");
export type Form = Decoded<typeof form>;

export const formPersonFields = {
  id: text,
  name: text,
  done_as: text,
  /** The same as people say it. */
  said_as: text,
  with: listOf(text),
  forecast,
  least: number,
  most: number,
  /** Reps: more are not in the piece. */
  holds: orNull(number),
  /** In which share of the rehearsal's runs the cap stops them, and how many reps they have then in the middle one. */
  capped: number,
  reps_at_cap: orNull(number),
  /** Of a load: all that the hall has for it, the lightest first; empty: it goes by `load_step`. */
  loads: listOf(number),
  /** Of a bar: the least that it can go up by; null: not known. */
  load_step: orNull(number),
};
const formPerson = objectOf(formPersonFields);
/** Who is to be scored, and what is expected of them; beyond `least` and `most` a score is asked about. */
export type FormPerson = Decoded<typeof formPerson>;

export const formPieceFields = { piece: text, title: text, scheme: text, form, cap_s: orNull(number), parts: number };
const formPiece = objectOf({ ...formPieceFields, people: listOf(formPerson) });
export type FormPiece = Decoded<typeof formPiece>;
export const scoreForm = objectOf({ pieces: listOf(formPiece) });

export const scorePath = (classId: string) => `/api/classes/${encodeURIComponent(classId)}/scores`;

/** A score being entered. `parts` are the results of the intervals, or one that is their sum; of rounds: rounds and reps. */
export interface Draft {
  readonly form: Form;
  readonly capped: boolean;
  readonly parts: readonly number[];
  readonly rounds: number;
  readonly reps: number;
}

/** Loads are kept to half a kilogram: a pair of 17.5 is no 18. */
const halfKilos = (load: number): number => Math.round(load * 2) / 2;

const sharedRounds = (reps: number, round: number): Pick<Draft, "rounds" | "reps"> => {
  const whole = Math.round(reps);
  const rounds = round >= 1 ? Math.floor(whole / round) : 0;
  return { rounds, reps: Math.floor(whole - rounds * round) };
};

type Expected = Pick<FormPerson, "forecast" | "capped" | "reps_at_cap" | "loads" | "load_step">;

/** The nearest load that the hall has: of a lot, of two equally near the lighter, or of the bar's steps. */
function nearestLoad({ loads, load_step }: Pick<Expected, "loads" | "load_step">, kilos: number): number {
  const nearest = loads.reduce<number | null>(
    (best, each) => (best === null || Math.abs(each - kilos) < Math.abs(best - kilos) ? each : best),
    null,
  );
  if (nearest !== null) return nearest;
  return load_step === null ? halfKilos(kilos) : Math.round(Math.round(kilos / load_step) * load_step * 100) / 100;
}

/** What the forecast says, in the form of the piece: the few taps that are left are the difference to it. */
export function prefilled(form: Form, person: Expected): Draft {
  const { forecast, capped, reps_at_cap } = person;
  const round = forecast.reps_per_round;
  const middle = form === "load" ? nearestLoad(person, forecast.p50) : Math.round(forecast.p50);
  const isTime = form === "time";
  return {
    form,
    capped: isTime && capped >= 0.5,
    parts: [middle],
    ...sharedRounds(isTime ? (reps_at_cap ?? 0) : forecast.p50, round),
  };
}

/** What is kept, to be corrected; what cannot be read starts from the forecast. */
export function draftOf(form: Form, person: Expected, kept: string | null): Draft {
  const draft = prefilled(form, person);
  const rounds = /^(cap, )?(\d+)\+(\d+)$/.exec(kept ?? "");
  if (rounds && (form === "rounds" || rounds[1] !== undefined))
    return { ...draft, capped: form === "time", rounds: Number(rounds[2]), reps: Number(rounds[3]) };
  if (kept === null || form === "rounds") return draft;
  const value = form === "time" ? secondsOf(kept) : Number(/^\d+(?:\.\d+)?/.exec(kept)?.[0] ?? NaN);
  return value === null || Number.isNaN(value) ? draft : { ...draft, capped: false, parts: [value] };
}

export const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
const two = (n: number): string => String(n).padStart(2, "0");

/** Seconds as a clock: '12:31', '1:02:10'. */
export function clock(seconds: number): string {
  const whole = Math.max(0, Math.round(seconds));
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`;
}

/** Seconds of what somebody typed: '12:31', '751'; null for anything else. */
export function secondsOf(typed: string): number | null {
  const met = /^(?:(?:(\d{1,2}):)?(\d{1,3}):)?(\d{1,4})$/.exec(typed.trim());
  if (!met) return null;
  const [hours, minutes, seconds] = [met[1], met[2], met[3]].map((part) => Number(part ?? 0));
  if (met[2] !== undefined && (seconds ?? 0) > 59) return null;
  return (hours ?? 0) * 3600 + (minutes ?? 0) * 60 + (seconds ?? 0);
}

/** The score as it stands on a sheet. */
export function scoreText(draft: Draft): string {
  const total = sum(draft.parts);
  if (draft.form === "rounds") return `${draft.rounds}+${draft.reps}`;
  if (draft.form === "time") return draft.capped ? `cap, ${draft.rounds}+${draft.reps}` : clock(total);
  const unit = { reps: "", load: " kg", distance: " m", kcal: " kcal" }[draft.form];
  return `${Math.round(total * 10) / 10}${unit}`;
}

/** The score in the forecast's measure; null for one that the cap stopped. */
export function valueOf(draft: Draft, forecast: ScoreForecast): number | null {
  if (draft.form === "time" && draft.capped) return null;
  return draft.form === "rounds" ? draft.rounds * forecast.reps_per_round + draft.reps : sum(draft.parts);
}

/** A value of the forecast as it would be scored. */
export function forecastText(form: Form, forecast: ScoreForecast, value: number): string {
  const round = forecast.reps_per_round;
  if (form === "time") return clock(value);
  if (form === "rounds" && round >= 1) return `${Math.floor(value / round)}+${Math.floor(value % round)}`;
  return scoreText({ form, capped: false, parts: [form === "load" ? halfKilos(value) : Math.round(value)], rounds: 0, reps: 0 });
}

/** Whether a rehearsal can say anything: of work without a load it cannot say how heavy. */
export const isForecast = (forecast: ScoreForecast): boolean => forecast.p90 > 0;

export function rangeText(form: Form, forecast: ScoreForecast): string {
  if (!isForecast(forecast)) return "unknown";
  const [low, high] = [forecast.p10, forecast.p90].map((value) => forecastText(form, forecast, value));
  return low === high ? `about ${low ?? ""}` : `${low ?? ""} to ${high ?? ""}`;
}

/** What to ask before a score is kept that nobody expects: 'forecast 9+0 to 14+3, really 38+0?'; null if it is believed. */
export function question(draft: Draft, person: Pick<FormPerson, "forecast" | "least" | "most" | "holds">): string | null {
  const value = valueOf(draft, person.forecast);
  if (value === null) return null;
  if (person.holds !== null && value > person.holds) return `The piece holds ${person.holds}, really ${scoreText(draft)}?`;
  if (!isForecast(person.forecast)) return value > 0 ? null : `Really ${scoreText(draft)}?`;
  if (value >= person.least && value <= person.most) return null;
  return `Forecast ${rangeText(draft.form, person.forecast)}, really ${scoreText(draft)}?`;
}

/** What a finish by the clock is kept as, so many milliseconds after the start. */
export const finishText = (milliseconds: number): string => clock(Math.floor(milliseconds / 1000));

/** Whether the cap of a piece is over so many milliseconds after its start: nobody finishes any more. */
export const isPastCap = ({ cap_s }: Pick<FormPiece, "cap_s">, milliseconds: number): boolean =>
  cap_s !== null && milliseconds >= (cap_s + 1) * 1000;

/** A line of the sheet, kept or still on its way. */
export interface ShownScore {
  readonly person: string;
  readonly piece: string;
  readonly score: string;
  /** What is kept of it; null while it is on its way. */
  readonly kept: ScoreLine | null;
  /** The key of what is on its way, and until when it may be taken back. */
  readonly key: string | null;
  readonly held: number;
}

interface Sent {
  readonly person?: string;
  readonly piece?: string;
  readonly score?: string;
}

/** The newest line of each person in a piece, with what is still on its way over what is kept. */
export function shownScores(kept: readonly ScoreLine[], outbox: Outbox, classId: string, piece: string): ReadonlyMap<string, ShownScore> {
  const shown = new Map<string, ShownScore>();
  for (const each of kept)
    if (each.piece === piece || each.piece === "")
      shown.set(each.person, { person: each.person, piece, score: each.score, kept: each, key: null, held: 0 });
  for (const letter of outbox) {
    const sent = letter.body as Sent;
    if (letter.path !== scorePath(classId) || letter.refused !== null || (sent.piece ?? "") !== piece) continue;
    if (sent.person === undefined || sent.score === undefined) continue;
    const { person, score } = sent;
    shown.set(person, { person, piece, score, kept: null, key: letter.key, held: letter.held });
  }
  return shown;
}

/** What one tap entered and what may still be taken back: of a pair the score of both. */
export interface OpenTap {
  readonly people: readonly string[];
  readonly keys: readonly string[];
  readonly score: string;
  readonly held: number;
}

/** The taps of the last seconds; who works together is taken back together. */
export function openTaps(shown: Iterable<ShownScore>, people: readonly Pick<FormPerson, "id" | "with">[], now: number): readonly OpenTap[] {
  const taps: OpenTap[] = [];
  for (const { person, key, score, held } of shown) {
    if (key === null || held <= now) continue;
    const partners = people.find((each) => each.id === person)?.with ?? [];
    const at = taps.findIndex((tap) => tap.score === score && tap.people.some((each) => partners.includes(each)));
    const tap = taps[at];
    if (tap) taps[at] = { ...tap, people: [...tap.people, person], keys: [...tap.keys, key] };
    else taps.push({ people: [person], keys: [key], score, held });
  }
  return taps;
}

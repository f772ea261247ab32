import { clock, secondsOf, sum, type Draft, type FormPerson, type FormPiece } from "./scores.ts";

/** Numbers to choose from. */
export interface Offered {
  readonly from: number;
  readonly to: number;
}

/** One row of numbers to tap, and what the value is after a tap on one of them. */
export interface Row {
  readonly name: string;
  readonly numbers: readonly number[];
  readonly chosen: number;
  readonly say: (number: number) => string;
  readonly after: (tapped: number) => number;
}

/** How a number is put together: the ways to split it into rows, the one with the fewest rows first. */
interface Scale {
  readonly splits: readonly (readonly number[])[];
  readonly names: Readonly<Record<number, string>>;
  /** The numbers of the last row, where they are not each step of it. */
  readonly rest?: readonly number[];
  readonly say: (value: number) => string;
  readonly read: (typed: string) => number | null;
}

/** More than these are chosen in two taps, the tens and the rest, or in three; three taps are left for any number. */
const atOnce = 24;
const widest = (step: number): number => (step === 1 ? atOnce : step === 10 ? 30 : 45);

/** So many rounds beyond what is believed: a good day is asked about, not hidden. */
const beyond = 3;
const roundsToCap = 11;

/** Where nobody can say how heavy, or how long. */
const anyLoad: Offered = { from: 0, to: 239.5 };

const plain = (typed: string): number | null => (/^\d+(?:[.,]\d+)?$/.test(typed.trim()) ? Number(typed.trim().replace(",", ".")) : null);

const whole: Scale = {
  splits: [[1], [10, 1], [100, 10, 1], [1000, 100, 10, 1]],
  names: { 1: "rest", 10: "tens", 100: "hundreds", 1000: "thousands" },
  say: String,
  read: (typed) => (Number.isInteger(plain(typed)) ? plain(typed) : null),
};
const time: Scale = {
  splits: [[60, 10, 1], [600, 60, 10, 1]],
  names: { 1: "seconds", 10: "ten seconds", 60: "minutes", 600: "ten minutes" },
  say: clock,
  read: secondsOf,
};
/** Kilograms: every whole one, and the halves that two small plates make; others are typed. */
const load: Scale = {
  splits: [[10, 0.5], [100, 10, 0.5]],
  names: { 0.5: "rest", 10: "tens", 100: "hundreds" },
  rest: [0, 1, 2, 2.5, 3, 4, 5, 6, 7, 7.5, 8, 9],
  say: String,
  read: plain,
};

const range = (from: number, to: number, step = 1): readonly number[] =>
  Array.from({ length: Math.max(0, Math.floor((to - from) / step) + 1) }, (_, at) => from + at * step);
const downTo = (value: number, step: number): number => Math.floor(value / step) * step;

function splitFor({ splits }: Scale, { from, to }: Offered): readonly number[] {
  const fits = splits.find(([first = 1]) => (downTo(to, first) - downTo(from, first)) / first < widest(first));
  return fits ?? splits[splits.length - 1] ?? [1];
}

/** The numbers to tap for a value: all at once, or of many the tens and the rest, the minutes and the seconds. */
export function rowsFor(offered: Offered, value: number, scale: Scale = whole): readonly Row[] {
  const steps = splitFor(scale, offered);
  const within = (wanted: number) => Math.min(offered.to, Math.max(offered.from, wanted));
  return steps.map((step, at): Row => {
    const above = steps[at - 1];
    const isLast = at === steps.length - 1;
    const inRow = above === undefined ? value : value % above;
    const digits = above === undefined ? range(downTo(offered.from, step), offered.to, step) : range(0, above - step, step);
    const chosen = isLast ? inRow : downTo(inRow, step);
    return {
      name: steps.length > 1 ? (scale.names[step] ?? "") : "",
      numbers: isLast && scale.rest && above !== undefined ? scale.rest : digits,
      chosen,
      say: above === undefined ? scale.say : (number) => `+${number}`,
      after: (tapped) => within(value - chosen + tapped),
    };
  });
}

type Expected = Pick<FormPerson, "forecast" | "least" | "most" | "holds" | "loads" | "load_step">;

/** The full rounds that a person may have done, all that are believed among them; null where nobody can say. */
export function roundsOffered({ forecast, least, most }: Pick<Expected, "forecast" | "least" | "most">): Offered | null {
  const round = forecast.reps_per_round;
  if (round < 1) return null;
  // Of a piece for time only the cap leaves rounds, and the forecast is of the time.
  if (forecast.measure !== "reps") return { from: 0, to: roundsToCap };
  const to = Math.ceil(most / round) + beyond;
  return { from: to < atOnce ? 0 : Math.max(0, Math.floor(least / round)), to };
}

/** The reps of somebody whom the cap stopped in a piece whose rounds are not alike. */
export const repsToCap: Offered = { from: 0, to: 599 };

/** What may be left over of a round that is not full; null where rounds are not alike. */
export function repsOffered(repsPerRound: number): Offered | null {
  return repsPerRound >= 2 ? { from: 0, to: Math.ceil(repsPerRound) - 1 } : null;
}

/** One number of a score: what it is, what is offered for it, and the draft with another one. */
export interface ScoreNumber {
  readonly label: string;
  readonly value: number;
  /** Whether the score says it as it stands: of a score that the cap stopped, the time is not said. */
  readonly said: boolean;
  readonly rows: readonly Row[];
  readonly say: (value: number) => string;
  readonly read: (typed: string) => number | null;
  readonly with: (value: number) => Draft;
}

const labels = { time: "Time", reps: "Reps", load: "Load in kg", distance: "Metres", kcal: "Kilocalories" } as const;
const scales = { time, reps: whole, load, distance: whole, kcal: whole } as const;

/** All that is believed, and the rest of the row that it ends in: a tap there is meant. */
function believed({ least, most }: Expected, scale: Scale): Offered {
  const wide = { from: Math.max(0, Math.floor(least)), to: Math.ceil(most) };
  const [first = 1] = splitFor(scale, wide);
  const unit = scale === load ? 0.5 : 1;
  return { from: downTo(wide.from, first), to: downTo(wide.to, first) + first - unit };
}

function offeredOf(piece: Pick<FormPiece, "form" | "cap_s" | "parts">, person: Expected): Offered {
  if (piece.form === "load" && person.most <= 0) return anyLoad;
  const all = believed(person, scales[piece.form as keyof typeof scales]);
  if (piece.form === "reps" && person.holds !== null) return { ...all, from: Math.min(all.from, person.holds), to: person.holds };
  if (piece.form === "time" && piece.cap_s !== null && piece.parts === 1) return { ...all, to: piece.cap_s };
  return all;
}

function numberOf(
  label: string,
  scale: Scale,
  offered: Offered,
  value: number,
  said: boolean,
  next: (value: number) => Draft,
): ScoreNumber {
  return { label, value, said, rows: rowsFor(offered, value, scale), say: scale.say, read: scale.read, with: next };
}

/** What is to be tapped for the rounds of a draft, of which the last is not full. */
function roundNumbers(person: Expected, draft: Draft): readonly ScoreNumber[] {
  const capped = draft.form === "time";
  const said = !capped || draft.capped;
  const rounds = roundsOffered(person);
  const reps = repsOffered(person.forecast.reps_per_round);
  if (rounds === null)
    return [numberOf("Reps done", whole, repsToCap, draft.reps, said, (done) => ({ ...draft, capped, rounds: 0, reps: done }))];
  return [
    numberOf("Full rounds", whole, rounds, draft.rounds, said, (full) => ({ ...draft, capped, rounds: full })),
    ...(reps === null
      ? []
      : [numberOf("Reps of the next round", whole, reps, draft.reps, said, (left) => ({ ...draft, capped, reps: left }))]),
  ];
}

/** Kilograms of a bar: what twice its smallest plate makes of each ten. */
const barOf = (step: number): Scale => ({ ...load, rest: range(0, 10 - step, step) });

/** A load that the hall has: one of its lots, all of them or those that are believed and one further either way. */
function lotNumber(label: string, person: Expected, draft: Draft): ScoreNumber {
  const value = sum(draft.parts);
  const { loads, least, most } = person;
  const lightest = loads.filter((each) => each < least).length - 1;
  const heaviest = loads.findIndex((each) => each > most);
  const near = loads.slice(Math.max(0, lightest), heaviest < 0 ? loads.length : heaviest + 1);
  const row: Row = {
    name: "",
    numbers: loads.length <= atOnce ? loads : near.slice(0, atOnce),
    chosen: value,
    say: String,
    after: (tapped) => tapped,
  };
  return { label, value, said: true, rows: [row], say: String, read: plain, with: (kilos) => ({ ...draft, capped: false, parts: [kilos] }) };
}

/** The numbers of a score in the form of its piece; of intervals their sum, which is what is kept. */
export function numbersOf(piece: Pick<FormPiece, "form" | "cap_s" | "parts">, person: Expected, draft: Draft): readonly ScoreNumber[] {
  const { form } = draft;
  if (form === "rounds") return roundNumbers(person, draft);
  const label = labels[form] + (piece.parts > 1 ? `, all ${piece.parts} intervals` : "");
  if (form === "load" && person.loads.length > 0) return [lotNumber(label, person, draft)];
  const scale = form === "load" && person.load_step !== null && person.load_step >= 0.5 ? barOf(person.load_step) : scales[form];
  const total = numberOf(label, scale, offeredOf(piece, person), sum(draft.parts), !draft.capped, (value) => ({
    ...draft,
    capped: false,
    parts: [value],
  }));
  return form === "time" && piece.cap_s !== null ? [total, ...roundNumbers(person, draft)] : [total];
}

/** The results of the intervals one by one; equal shares where only their sum is known. */
export function partsOf(piece: Pick<FormPiece, "parts">, draft: Draft): readonly number[] {
  if (draft.parts.length === piece.parts) return draft.parts;
  const total = sum(draft.parts);
  const share = Math.floor(total / piece.parts);
  const rest = total - share * piece.parts;
  return Array.from({ length: piece.parts }, (_, at) => share + Math.min(1, Math.max(0, rest - at)));
}

import type { ClassRow, GymClass } from "./gym.ts";
import type { PersonRow } from "./people.ts";

/** What a coach sets of a class beforehand; who stands at the door and what is broken is said elsewhere. */
export type ClassPlan = Pick<GymClass, "date" | "start" | "minutes" | "board_id" | "booked" | "weather" | "boxes_min" | "indoors">;

const parts = ["date", "start", "minutes", "board_id", "booked", "weather", "boxes_min", "indoors"] as const;

/** What each part of a plan is called where somebody else changed it, too. */
const partNames: Readonly<Record<keyof ClassPlan, string>> = {
  date: "the day",
  start: "the start",
  minutes: "the minutes",
  board_id: "the board",
  booked: "who is booked",
  weather: "the weather",
  boxes_min: "the minutes beside the work",
  indoors: "whether all are indoors",
};

/** A class of which nothing is known yet. */
export const emptyClass: GymClass = {
  id: "",
  date: null,
  start: null,
  minutes: 60,
  board_id: "",
  booked: [],
  arrivals: [],
  walk_ins: [],
  faults: [],
  weather: { text: "", temp_c: null, wbgt_c: null, rain: false, daylight: true, closed_routes: [] },
  boxes_min: {},
  indoors: false,
};

/** The class with other people booked; whoever was counted on and is booked no more is not counted on. */
export function withBooked(from: GymClass, booked: readonly string[]): GymClass {
  const gone = from.booked.filter((id) => !booked.includes(id));
  const added = booked.filter((id) => !from.booked.includes(id));
  const walk_ins = from.walk_ins.filter((id) => !added.includes(id));
  // Without arrivals, all who are booked are counted on.
  if (from.arrivals.length === 0) return { ...from, booked, walk_ins };
  const stay = from.arrivals.filter(({ id }) => !gone.includes(id));
  const come = added.filter((id) => !stay.some((each) => each.id === id)).map((id) => ({ id, late_s: 0 }));
  return { ...from, booked, walk_ins, arrivals: [...stay, ...come] };
}

/** The class as it would be with this plan. */
export function withPlan(from: GymClass, plan: ClassPlan): GymClass {
  const booked = withBooked(from, plan.booked);
  return { ...booked, ...pick(plan), booked: plan.booked };
}

const pick = (plan: ClassPlan): ClassPlan => ({
  date: plan.date,
  start: plan.start,
  minutes: plan.minutes,
  board_id: plan.board_id,
  booked: plan.booked,
  weather: plan.weather,
  boxes_min: plan.boxes_min,
  indoors: plan.indoors,
});

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** A plan that was changed here while the class was changed elsewhere: both, or what both changed differently. */
export type Merged = { readonly plan: ClassPlan } | { readonly both: readonly string[] };

/** What was changed here of `before`, laid over the class as it is kept `now`. */
export function mergedPlan(before: GymClass, mine: ClassPlan, now: GymClass): Merged {
  const changed = parts.filter((part) => !same(mine[part], before[part]));
  const both = changed.filter((part) => !same(now[part], before[part]) && !same(now[part], mine[part]));
  if (both.length > 0) return { both: both.map((part) => partNames[part]) };
  return { plan: changed.reduce<ClassPlan>((plan, part) => ({ ...plan, [part]: mine[part] }), pick(now)) };
}

/** A plan as it is typed: numbers as the letters that stand there. */
export interface WrittenPlan extends Omit<ClassPlan, "date" | "start" | "minutes" | "weather" | "boxes_min"> {
  readonly date: string;
  readonly start: string;
  readonly minutes: string;
  readonly weather: Omit<GymClass["weather"], "temp_c" | "wbgt_c">;
  readonly temp_c: string;
  readonly wbgt_c: string;
  readonly boxes: Readonly<Record<string, string>>;
}

const letters = (value: number | null | undefined): string => (value === null || value === undefined ? "" : String(value));

/** A class's plan as a form shows it. */
export function writtenPlan(from: GymClass): WrittenPlan {
  const { temp_c, wbgt_c, ...weather } = from.weather;
  return {
    date: from.date ?? "",
    start: from.start ?? "",
    minutes: letters(from.minutes),
    board_id: from.board_id,
    booked: from.booked,
    weather,
    temp_c: letters(temp_c),
    wbgt_c: letters(wbgt_c),
    boxes: Object.fromEntries(Object.entries(from.boxes_min).map(([box, minutes]) => [box, letters(minutes)])),
    indoors: from.indoors,
  };
}

/** What has to be mended before a plan can be kept, by the field that it is about. */
export type PlanFaults = Readonly<Record<string, string>>;

/** Writes down what is wrong with numbers, and gives those that are right. */
class Numbers {
  readonly wrong: Record<string, string> = {};

  read(field: string, typed: string, least: number, most: number, unit: string): number | null {
    if (typed.trim() === "") return null;
    const value = Number(typed.trim().replace(",", "."));
    if (Number.isFinite(value) && value >= least && value <= most) return value;
    this.wrong[field] = `${unit} from ${least} to ${most}, or nothing.`;
    return null;
  }
}

/** The plan that is written, or what is wrong with it. */
export function readPlan(written: WrittenPlan): { readonly plan: ClassPlan; readonly faults: PlanFaults } {
  const numbers = new Numbers();
  const minutes = numbers.read("minutes", written.minutes, 1, 1440, "Minutes");
  const temp_c = numbers.read("temp_c", written.temp_c, -60, 60, "Degrees");
  const wbgt_c = numbers.read("wbgt_c", written.wbgt_c, -60, 60, "Degrees");
  const boxes = Object.entries(written.boxes)
    .map(([box, typed]) => [box, numbers.read(box, typed, 0, 120, "Minutes")] as const)
    .filter((each): each is readonly [string, number] => each[1] !== null);
  const faults = {
    ...(/^\d{4}-\d\d-\d\d$/.test(written.date) ? {} : { date: "Say on which day the class is." }),
    ...(/^([01]?\d|2[0-3]):[0-5]\d$/.test(written.start) ? {} : { start: "Say when it starts, such as 17:30." }),
    ...numbers.wrong,
  };
  const { date, start, board_id, booked, indoors } = written;
  const weather = { ...written.weather, temp_c, wbgt_c };
  return { plan: { date, start, minutes, board_id, booked, weather, boxes_min: Object.fromEntries(boxes), indoors }, faults };
}

/** An id for a class of that day and time: `2027-05-15-0900`, and with a number behind where there is one already. */
export function classId(rows: readonly ClassRow[], date: string, start: string): string {
  const stem = [date, start.replace(":", "")].filter(Boolean).join("-");
  for (let n = 1; ; ++n) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    if (!rows.some((row) => row.id === id)) return id;
  }
}

/** The day so many days later. */
export function dayAfter(date: string, days: number): string {
  const at = Date.parse(`${date}T00:00:00Z`);
  return Number.isNaN(at) ? date : new Date(at + days * 86_400_000).toISOString().slice(0, 10);
}

/** Another class like this one, a week later: same hour, board and people; what was at the door stays behind. */
export const nextLike = (from: GymClass): GymClass => ({
  ...emptyClass,
  date: from.date === null ? null : dayAfter(from.date, 7),
  start: from.start,
  minutes: from.minutes,
  board_id: from.board_id,
  booked: from.booked,
  boxes_min: from.boxes_min,
  indoors: from.indoors,
});

const days = ["sun", "mon", "tue", "wed", "thu", "fri", "sat"];

/** Who usually comes on the weekday of a date, by id. */
export function usuallyOn(rows: readonly PersonRow[], date: string): readonly string[] {
  const at = Date.parse(`${date}T00:00:00Z`);
  const day = Number.isNaN(at) ? undefined : days[new Date(at).getUTCDay()];
  return day === undefined
    ? []
    : rows.filter((row) => (row["attends"] ?? "").split(/\s+/).includes(day)).map((row) => row["id"] ?? "");
}

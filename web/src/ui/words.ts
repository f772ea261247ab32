/** Words that several views say. Pure: the same value, the same words, whatever the machine's language. */

const weekdays = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];
const months = [
  "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
  "December",
];

/** The day of a date at noon of no zone; null for what is no date. */
function dayOf(date: string): Date | null {
  const met = /^(\d{4})-(\d\d)-(\d\d)$/.exec(date);
  const at = met ? new Date(Date.UTC(Number(met[1]), Number(met[2]) - 1, Number(met[3]))) : null;
  return !at || Number.isNaN(at.getTime()) ? null : at;
}

const weekday = (day: Date): string => weekdays[day.getUTCDay()] ?? "";
const month = (day: Date): string => months[day.getUTCMonth()] ?? "";

/** `2027-05-15` as 'Saturday 15 May 2027'; what is no date as it is. */
export function dayWords(date: string): string {
  const day = dayOf(date);
  return day ? `${weekday(day)} ${day.getUTCDate()} ${month(day)} ${day.getUTCFullYear()}` : date;
}

/** The weekday of `2027-05-15`: 'Saturday'. */
export function weekdayOf(date: string): string {
  const day = dayOf(date);
  return day ? weekday(day) : "";
}

/** `2027-05-15` as 'Sat 15 May', for where there is little room. */
export function shortDay(date: string): string {
  const day = dayOf(date);
  return day ? `${weekday(day).slice(0, 3)} ${day.getUTCDate()} ${month(day).slice(0, 3)}` : date;
}

/** A moment of the program (`2027-05-15T06:12:00Z`) as the device's clock has it: 'Sat 15 May 2027, 08:12'. */
export function localMoment(instant: string): string {
  const at = new Date(instant);
  if (Number.isNaN(at.getTime())) return instant;
  const two = (n: number) => String(n).padStart(2, "0");
  const date = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${shortDay(date)} ${at.getFullYear()}, ${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** Whole days from one date to another. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}

/** The time of day so many seconds after another: `09:00` and 3600 are `10:00`. */
export function timeAfter(start: string, seconds: number): string {
  const met = /^(\d\d?):(\d\d)$/.exec(start);
  if (!met) return "";
  const minutes = (Number(met[1]) * 60 + Number(met[2]) + Math.round(seconds / 60)) % 1440;
  return `${String(Math.floor(minutes / 60)).padStart(2, "0")}:${String(minutes % 60).padStart(2, "0")}`;
}

/** An instant of the program, `2027-05-15T07:03:00Z`, by the device's clock: 'today at 09:03', 'Sat 15 May at 09:03'. */
export function instantWords(instant: string, now: Date): string {
  const at = new Date(instant);
  if (Number.isNaN(at.getTime())) return instant;
  const two = (n: number): string => String(n).padStart(2, "0");
  const date = (day: Date): string => `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
  const day = date(at) === date(now) ? "today" : shortDay(date(at));
  return `${day} at ${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** '1 person', '3 people'. */
export const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** 'Ana', 'Ana and Bo', 'Ana, Bo and Cy'. */
export function listWords(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? "";
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1] ?? ""}`;
}

/** A kind of thing by its id, for when its name is not known: `pull-up-bar` is 'Pull-up-bar'. */
export const idWords = (id: string): string => id.charAt(0).toUpperCase() + id.slice(1);

const shortIds: Readonly<Record<string, string>> = { bb: "barbell", db: "dumbbell", kb: "kettlebell" };

/** Ids of movements as words, where their names are not known: `run / kb-swing` is 'run, kettlebell swing'. */
export const movementWords = (ids: string): string =>
  ids
    .replaceAll(/\s*\/\s*/g, ", ")
    .replaceAll(/_|-(?!ups?\b)/g, " ")
    .replaceAll(/\b[bdk]b\b/g, (short) => shortIds[short] ?? short);

/** A mark by its column: `5rm bb-deadlift` with 60 is ['5RM barbell deadlift', '60 kg']. */
export function markWords(column: string, cell: string): readonly [name: string, value: string] {
  const lift = /^(\d+)rm (.*?)(?: \((lb)\))?$/.exec(column);
  if (!lift) return [movementWords(column), cell];
  return [`${lift[1] ?? ""}RM ${movementWords(lift[2] ?? "")}`, `${cell} ${lift[3] ?? "kg"}`];
}

/** 16 is '16', 12.5 is '12.5'. */
export const plainNumber = (value: number): string => String(Math.round(value * 10) / 10);

/** What the program answers, as a sentence of its own: a capital first, a full stop last. */
export function sentence(words: string): string {
  const trimmed = words.trim();
  const whole = trimmed.charAt(0).toUpperCase() + trimmed.slice(1);
  return /[.!?]$/.test(whole) ? whole : `${whole}.`;
}

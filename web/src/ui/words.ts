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

/** '1 person', '3 people'. */
export const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

/** 'Ana', 'Ana and Bo', 'Ana, Bo and Cy'. */
export function listWords(words: readonly string[]): string {
  if (words.length < 2) return words[0] ?? "";
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1] ?? ""}`;
}

/** A kind of thing by its id, for when its name is not known: `pull-up-bar` is 'Pull-up-bar'. */
export const idWords = (id: string): string => id.charAt(0).toUpperCase() + id.slice(1);

/** 16 is '16', 12.5 is '12.5'. */
export const plainNumber = (value: number): string => String(Math.round(value * 10) / 10);

/** What the program answers, as a sentence of its own: a capital first, a full stop last. */
export function sentence(words: string): string {
  const trimmed = words.trim();
  const whole = trimmed.charAt(0).toUpperCase() + trimmed.slice(1);
  return /[.!?]$/.test(whole) ? whole : `${whole}.`;
}

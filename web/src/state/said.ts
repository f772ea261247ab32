import { effortPath, notePath } from "../model/effort.ts";
import { sender } from "./sender.ts";

/** Puts a note for the coaches on its way, until a last day if there is one; an empty note is none. */
export function sendNote(person: string, note: string, words: string, until = ""): void {
  const text = note.trim();
  if (text === "") return;
  sender.send({ path: notePath, how: "POST", body: { person, text, ...(until === "" ? {} : { until }) }, words });
}

/** Puts on its way how hard the hour was for somebody. */
export function sendEffort(classId: string, person: string, effort: number): void {
  sender.send({ path: effortPath(classId), how: "PUT", body: { person, effort }, words: `effort ${String(effort)} of the hour` });
}

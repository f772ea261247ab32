import type { Answer } from "../api/client.ts";
import type { Topic } from "../api/events.ts";
import { Kept } from "./kept.ts";
import type { Reading } from "../model/reading.ts";
import { program } from "./program.ts";

const all: Kept<unknown>[] = [];

function kept<T>(ask: () => Promise<Answer<T>>, ...topics: Topic[]): Kept<T> {
  return added(new Kept(ask, topics));
}

function added<T>(made: Kept<T>): Kept<T> {
  all.push(made as Kept<unknown>);
  return made;
}

/** What the floor looks at while much changes is asked for after so many milliseconds of changes. */
const rehearsedPause = 1500;

export const gym = kept(program.gym, "classes", "hall");
export const boards = kept(program.boards, "boards", "house");
export const classes = kept(program.classes, "classes");
export const people = kept(program.people, "people");
export const floorPeople = kept(program.floorPeople, "people", "classes");
export const notes = kept(program.notes, "people");
export const hall = kept(program.hall, "hall");
export const house = kept(program.house, "house");
export const movements = kept(program.movements);
export const equipment = kept(program.equipment);
export const limitKinds = kept(program.limits);
export const accounts = kept(program.accounts);

/** One of many things kept, by its id; asked for when it is first wanted. */
function keptById<T>(ask: (id: string) => Promise<Answer<T>>, ...topics: Topic[]): (id: string) => Kept<T> {
  return byId((id) => new Kept(() => ask(id), topics));
}
/** The same for an answer that takes a rehearsal, asked for while the floor taps. */
function rehearsedById<T>(ask: (id: string) => Promise<Answer<T>>, ...topics: Topic[]): (id: string) => Kept<T> {
  return byId((id) => new Kept(() => ask(id), topics, rehearsedPause));
}
function byId<T>(make: (id: string) => Kept<T>): (id: string) => Kept<T> {
  const known = new Map<string, Kept<T>>();
  return (id) => {
    const one = known.get(id) ?? added(make(id));
    known.set(id, one);
    return one;
  };
}

/** When the program last said who is out, by the device's clock. */
export const runnersAskedAt = new Map<string, number>();
async function askRunners(id: string) {
  const answer = await program.runners(id);
  runnersAskedAt.set(id, Date.now());
  return answer;
}

const anyChange: readonly Topic[] = ["boards", "classes", "people", "hall", "house", "scores"];

export const classOf = keptById(program.gymClass, "classes");
export const lastOf = keptById(program.boardLast, "boards", "scores");
export const boardOf = keptById(program.board, "boards");
export const briefOf = keptById(program.brief, ...anyChange);
export const rehearsalOf = keptById((id: string) => program.rehearse({ class: id }), ...anyChange);
export const personOf = keptById(program.person, "people");
export const scoresOf = keptById(program.personScores, ...anyChange);
export const arrivalsOf = keptById(program.arrivals, "door", "classes", "people", "boards");
export const listEffectOf = rehearsedById(program.listEffect, "classes", "boards", "hall");
export const runnersOf = keptById(askRunners, "door", "classes");
export const runsOf = rehearsedById(program.runs, "classes", "boards", "hall", "people");
export const scoreFormOf = rehearsedById(program.scoreForm, "classes", "boards", "hall", "people");
export const resultsOf = rehearsedById(program.results, "scores", "classes", "people");
export const ownTodayOf = rehearsedById(program.ownToday, ...anyChange);
export const consentOf = keptById(program.consent, "people");
export const classScoresOf = keptById(program.classScores, "scores");
export const effortsOf = keptById(program.efforts, "scores");
export const homeOf = rehearsedById(program.home, ...anyChange);
export const lineUpOf = rehearsedById(program.lineUp, "classes", "boards", "hall", "people");
export const emergency = kept(program.emergency, "house");
export const readingOf = keptById(readBoard, "boards", "house");

async function readBoard(id: string): Promise<Answer<Reading>> {
  const board = await program.board(id);
  return board.ok ? await program.read(board.value.text) : board;
}

type Listener = (topic: Topic) => void;
const listeners = new Set<Listener>();

/** Hears of every change from now on. Returns how to stop. */
export function heardChange(listener: Listener): () => void {
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
  };
}

/** Tells everything that was looked at what changed. */
export function tellChange(topic: Topic): void {
  for (const each of all) each.heard(topic);
  for (const each of listeners) each(topic);
}

/** Looks again at everything that is looked at: for when changes may have been missed. */
export function lookAgainAtAll(): void {
  for (const each of all) void each.lookAgainIfWanted();
}

/** Forgets everything: for when somebody else signs in. */
export function forgetAll(): void {
  for (const each of all) each.forget();
}

import { account, accounts, me } from "../model/account.ts";
import {
  boardLast,
  boardRows,
  classRows,
  gym,
  keptBoard,
  keptClass,
  keptHouse,
  movements,
  saved,
  tidied,
  type GymClass,
  type House,
} from "../model/gym.ts";
import { keptHall, type Hall } from "../model/hall.ts";
import { arrivals, listEffect } from "../model/arrivals.ts";
import { clock, programTime } from "../model/clock.ts";
import { awayPlan, type AwayPlace } from "../model/away.ts";
import { brief, pastScores } from "../model/brief.ts";
import { equipmentList, limitKinds } from "../model/catalogue.ts";
import { anything } from "../model/decode.ts";
import { floorPeople, floorPerson, peoplePreview, peopleTable, personRow, type PersonRow } from "../model/people.ts";
import { efforts } from "../model/effort.ts";
import { fitPlan } from "../model/fits.ts";
import { hourPlan } from "../model/hour_plan.ts";
import { emergencyCard } from "../model/emergency.ts";
import { home } from "../model/home.ts";
import { lineUp } from "../model/line_up.ts";
import { runners, runs } from "../model/runners.ts";
import { notes } from "../model/notes.ts";
import { consent, ownToday } from "../model/own_today.ts";
import { results } from "../model/results.ts";
import { classScores, scoreForm, type ScoreChange } from "../model/scores.ts";
import { reading } from "../model/reading.ts";
import { rehearsal } from "../model/rehearsal.ts";
import { repairPlan } from "../model/repairs.ts";
import { trailPage } from "../model/trail.ts";
import { warmUpPlan } from "../model/warm_up.ts";
import type { Client } from "./client.ts";

/** What to change for one look at a class; what is left out stays as the class has it. */
export interface WhatIf {
  readonly text?: string;
  readonly board?: string;
  readonly class?: string;
  readonly heads?: number;
  readonly out?: Readonly<Record<string, number>>;
  readonly indoors?: boolean;
  readonly runs?: number;
  readonly seed?: number;
}

/** Something done to the clock of a class. The same key is done once. */
export interface ClockAct {
  readonly act: string;
  readonly key: string;
  readonly version: number;
  readonly at_ms: number;
  readonly cue?: string;
  readonly seconds?: number;
}

export interface NewAccount {
  readonly name: string;
  readonly role: string;
  readonly password?: string;
  readonly class?: string;
  readonly person?: string;
  readonly pin?: string;
}

const at = (kind: string, id: string) => `/api/${kind}/${encodeURIComponent(id)}`;

/** Every question that the page asks, each with the shape of its answer. */
export const questions = (client: Client) => ({
  me: () => client.ask("GET", "/api/me", me),
  becomeOwner: (token: string, name: string, password: string) =>
    client.ask("POST", "/api/owner", me, name ? { token, name, password } : { token }),
  signIn: (name: string, password: string) => client.ask("POST", "/api/sign-in", me, { name, password }),
  signInByLink: (link: string, pin: string | null) =>
    client.ask("POST", "/api/sign-in", me, pin === null ? { link } : { link, pin }),
  signOut: () => client.ask("POST", "/api/sign-out", anything),
  accounts: () => client.ask("GET", "/api/accounts", accounts),
  keepAccount: (made: NewAccount) => client.ask("POST", "/api/accounts", account, made),

  removeAccount: (name: string) => client.ask("POST", "/api/accounts/remove", anything, { name }),

  trail: (before: number | null) =>
    client.ask("GET", before === null ? "/api/trail" : `/api/trail/${before}`, trailPage),

  gym: () => client.ask("GET", "/api/gym", gym),
  boards: () => client.ask("GET", "/api/boards", boardRows),
  board: (id: string) => client.ask("GET", at("boards", id), keptBoard),
  boardLast: (id: string) => client.ask("GET", `${at("boards", id)}/last`, boardLast),
  keepBoard: (id: string, text: string, version: string | null) =>
    client.ask("PUT", at("boards", id), saved, version === null ? { text } : { text, version }),
  classes: () => client.ask("GET", "/api/classes", classRows),
  gymClass: (id: string) => client.ask("GET", at("classes", id), keptClass),
  keepClass: (changed: GymClass, version: string | null) =>
    client.ask("PUT", at("classes", changed.id), saved, { class: changed, ...(version === null ? {} : { version }) }),
  removeClass: (id: string, version: string) => client.ask("DELETE", at("classes", id), anything, { version }),

  arrivals: (id: string) => client.ask("GET", `${at("classes", id)}/arrivals`, arrivals),
  listEffect: (id: string) => client.ask("GET", `${at("classes", id)}/arrivals/effect`, listEffect),
  runners: (id: string) => client.ask("GET", `${at("classes", id)}/runners`, runners),
  runs: (id: string) => client.ask("GET", `${at("classes", id)}/runs`, runs),
  classScores: (id: string) => client.ask("GET", `${at("classes", id)}/scores`, classScores),
  keepScore: (number: number, line: ScoreChange) => client.ask("PUT", `/api/scores/${number}`, anything, line),
  scoreVersions: (number: number) => client.ask("GET", `/api/scores/${number}/versions`, classScores),
  scoreForm: (id: string) => client.ask("GET", `${at("classes", id)}/score-form`, scoreForm),
  results: (id: string) => client.ask("GET", `${at("classes", id)}/results`, results),
  ownToday: (id: string) => client.ask("GET", `${at("people", id)}/today`, ownToday),
  consent: (id: string) => client.ask("GET", `${at("people", id)}/consent`, consent),
  keepConsent: (id: string, inRankings: boolean) =>
    client.ask("PUT", `${at("people", id)}/consent`, consent, { in_rankings: inRankings }),
  emergency: () => client.ask("GET", "/api/emergency", emergencyCard),
  keepEmergency: (text: string, version: string) => client.ask("PUT", "/api/emergency", saved, { text, version }),
  time: () => client.ask("GET", "/api/time", programTime),
  clock: (id: string) => client.ask("GET", `${at("classes", id)}/clock`, clock),
  home: (id: string) => client.ask("GET", `${at("classes", id)}/home`, home),
  lineUp: (id: string) => client.ask("GET", `${at("classes", id)}/line-up`, lineUp),
  efforts: (id: string) => client.ask("GET", `${at("classes", id)}/effort`, efforts),
  clockAct: (id: string, act: ClockAct) => client.ask("POST", `${at("classes", id)}/clock`, clock, act),

  notes: () => client.ask("GET", "/api/notes", notes),
  removeNote: (number: number) => client.ask("DELETE", `/api/notes/${number}`, anything),

  brief: (id: string) => client.ask("GET", `${at("classes", id)}/brief`, brief),

  people: () => client.ask("GET", "/api/people", peopleTable),
  floorPeople: () => client.ask("GET", "/api/people", floorPeople),
  person: (id: string) => client.ask("GET", at("people", id), personRow),
  floorPerson: (id: string) => client.ask("GET", at("people", id), floorPerson),
  personScores: (id: string) => client.ask("GET", `${at("people", id)}/scores`, pastScores),
  keepPeople: (rows: readonly PersonRow[], version: string) =>
    client.ask("PUT", "/api/people", saved, { rows, version }),
  previewPeople: (csv: BodyInit) => client.sendFile("/api/people/preview", peoplePreview, csv, "text/csv"),

  hall: () => client.ask("GET", "/api/hall", keptHall),
  keepHall: (changed: Hall, version: string) => client.ask("PUT", "/api/hall", saved, { hall: changed, version }),
  house: () => client.ask("GET", "/api/house", keptHouse),
  keepHouse: (changed: House, version: string) => client.ask("PUT", "/api/house", saved, { house: changed, version }),

  read: (text: string, stop?: AbortSignal) => client.ask("POST", "/api/read", reading, { text }, stop),
  tidy: (text: string) => client.ask("POST", "/api/tidy", tidied, { text }),
  rehearse: (what: WhatIf, stop?: AbortSignal) => client.ask("POST", "/api/rehearse", rehearsal, what, stop),
  repairs: (what: WhatIf, stop?: AbortSignal) => client.ask("POST", "/api/repairs", repairPlan, what, stop),
  fits: (what: WhatIf, stop?: AbortSignal) => client.ask("POST", "/api/fit", fitPlan, what, stop),
  warmUp: (what: WhatIf, stop?: AbortSignal) => client.ask("POST", "/api/warmup", warmUpPlan, what, stop),
  hourPlan: (what: WhatIf, stop?: AbortSignal) => client.ask("POST", "/api/timetable", hourPlan, what, stop),
  ownAway: (id: string, place: AwayPlace, stop?: AbortSignal) =>
    client.ask("POST", `${at("people", id)}/away`, awayPlan, place, stop),
  equipment: () => client.ask("GET", "/api/equipment", equipmentList),
  limits: () => client.ask("GET", "/api/limits", limitKinds),
  movements: () => client.ask("GET", "/api/movements", movements),
});

export type Questions = ReturnType<typeof questions>;

import { clock } from "./scores.ts";
import { flag, listOf, number, objectOf, text, type Decoded } from "./decode.ts";

const standing = objectOf({ id: text, name: text, heat: number, place: number, starts_s: number, with: listOf(text) });
const pieceLineUp = objectOf({ piece: number, title: text, heats: number, lanes: flag, people: listOf(standing) });
type Standing = Decoded<typeof standing>;
/** Who stands where in one piece; `piece` is that of the clock's cues. */
export type PieceLineUp = Decoded<typeof pieceLineUp>;
export const lineUp = objectOf({ pieces: listOf(pieceLineUp) });

/** People who go at the same signal; `teams` holds who works together, one alone where nobody does. */
export interface Gathering {
  readonly name: string;
  readonly teams: readonly (readonly Standing[])[];
}

function teamsOf(people: readonly Standing[]): readonly (readonly Standing[])[] {
  const teams: Standing[][] = [];
  for (const person of people) {
    const own = teams.find((team) => team.some((each) => each.with.includes(person.id)));
    if (own) own.push(person);
    else teams.push([person]);
  }
  return teams;
}

const isTeamPiece = (piece: PieceLineUp): boolean => piece.people.some((person) => person.with.length > 0);

/** What people who go together are called: 'Heat 2, group 3, 0:40 after the signal'; empty: all go at once. */
function nameOf(piece: PieceLineUp, heat: number, group: number, starts: number): string {
  const parts = [
    piece.heats > 1 ? `heat ${heat + 1}` : "",
    piece.people.some((person) => person.starts_s > 0) ? `group ${group + 1}` : "",
    starts > 0 ? `${clock(starts)} after the signal` : "",
  ].filter(Boolean);
  const name = parts.join(", ");
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** Heats and groups in the order in which they go, and in each who stands where. */
export function gatherings(piece: PieceLineUp): readonly Gathering[] {
  const out: Gathering[] = [];
  for (let heat = 0; heat < piece.heats; ++heat) {
    const ofHeat = piece.people.filter((person) => person.heat === heat).sort((a, b) => a.place - b.place);
    const starts = [...new Set(ofHeat.map((person) => person.starts_s))].sort((a, b) => a - b);
    for (const [group, at] of starts.entries()) {
      const teams = teamsOf(ofHeat.filter((person) => person.starts_s === at));
      out.push({ name: nameOf(piece, heat, group, at), teams });
    }
  }
  return out;
}

/** 'Lane 2: Ana and Bo', as far as there are lanes. */
export function teamWords(piece: PieceLineUp, team: readonly Standing[], name: (person: Standing) => string): string {
  const lane = piece.lanes ? `Lane ${(team[0]?.place ?? 0) + 1}: ` : "";
  return lane + team.map(name).join(" + ");
}

/** First names where they tell people apart, with a letter of the last name where they do not. */
export function shortName(person: Standing, people: readonly Standing[]): string {
  const [first = person.name, ...rest] = person.name.split(" ");
  const alike = people.filter((each) => each.name.split(" ")[0] === first);
  return alike.length > 1 && rest.length > 0 ? `${first} ${rest.at(-1)?.charAt(0) ?? ""}.` : first;
}

const namesALine = 5;
/** More people who go one by one than these are said several a line. */
const mostAlone = 6;

/** 'Groups 1 to 5: Ana, Bo, ...' of people who go one after another. */
function oneByOne(said: readonly string[]): readonly string[] {
  return Array.from({ length: Math.ceil(said.length / namesALine) }, (_, line) => {
    const names = said.slice(line * namesALine, (line + 1) * namesALine);
    const first = line * namesALine + 1;
    return `${names.length > 1 ? `Groups ${first} to ${first + names.length - 1}` : `Group ${first}`}: ${names.join(", ")}`;
  });
}

/** Who stands where as lines for a wall, short enough to be read from afar. */
export function wallLineUp(piece: PieceLineUp): readonly string[] {
  const short = (person: Standing) => shortName(person, piece.people);
  const apart = isTeamPiece(piece) || piece.lanes;
  const all = gatherings(piece);
  if (!apart && piece.heats === 1 && all.length > mostAlone && all.every(({ teams }) => teams.length === 1))
    return oneByOne(all.flatMap(({ teams }) => teams.map((team) => teamWords(piece, team, short))));
  return all.flatMap(({ name, teams }) => {
    const before = `${name || piece.title}: `;
    const said = teams.map((team) => teamWords(piece, team, short));
    if (apart) return said.map((words) => before + words);
    return Array.from({ length: Math.ceil(said.length / namesALine) }, (_, line) =>
      before + said.slice(line * namesALine, (line + 1) * namesALine).join(", "),
    );
  });
}

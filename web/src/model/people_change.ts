import type { PersonRow } from "./people.ts";

/** What becomes of the people when an imported table is taken in. */
export interface Merged {
  readonly rows: readonly PersonRow[];
  readonly added: readonly string[];
  readonly changed: readonly string[];
  readonly same: readonly string[];
}

const nameOf = (row: PersonRow): string => row["name"] ?? row["id"] ?? "";

/** Who an imported row means: the same id, else the one person of that name. */
function indexOfSame(rows: readonly PersonRow[], row: PersonRow): number {
  const byId = rows.findIndex((each) => each["id"] !== undefined && each["id"] === row["id"]);
  if (byId >= 0) return byId;
  const named = rows.filter((each) => nameOf(each) === nameOf(row));
  return named.length === 1 && named[0] ? rows.indexOf(named[0]) : -1;
}

/** Takes imported rows in: known people get the cells that are filled, others are added, nobody is taken out. */
export function mergePeople(known: readonly PersonRow[], imported: readonly PersonRow[]): Merged {
  const rows = [...known];
  const added: string[] = [];
  const changed: string[] = [];
  const same: string[] = [];
  for (const row of imported) {
    const at = indexOfSame(rows, row);
    const before = rows[at];
    if (before === undefined) {
      rows.push(row);
      added.push(nameOf(row));
      continue;
    }
    const { id: _, ...cells } = row;
    const differs = Object.entries(cells).some(([column, cell]) => before[column] !== cell);
    rows[at] = { ...before, ...cells };
    (differs ? changed : same).push(nameOf(row));
  }
  return { rows, added, changed, same };
}

/** The row with a cell written, or emptied where there is nothing. */
export function withCell(row: PersonRow, column: string, cell: string): PersonRow {
  const { [column]: _, ...rest } = row;
  return cell.trim() === "" ? rest : { ...rest, [column]: cell.trim() };
}

/** One limit of a person as the table keeps it: `shoulder@2027-05-31`, and the action word of the same place. */
export interface Limit {
  readonly id: string;
  readonly until: string;
  readonly action: string;
}

/** Actions are parted by a bar; a bar inside of one is `\|`. */
function partedByBars(cell: string): readonly string[] {
  return cell.split(/(?<!\\)\|/).map((part) => part.replaceAll("\\|", "|").trim());
}

/** The limits of a row, each with its action. */
export function limitsOf(row: PersonRow): readonly Limit[] {
  const ids = (row["limits"] ?? "").split(/\s+/).filter(Boolean);
  const actions = row["actions"] ? partedByBars(row["actions"]) : [];
  return ids.map((each, index) => {
    const [id = "", until = ""] = each.split("@");
    return { id, until, action: actions[index] ?? "" };
  });
}

/** The row with these limits and actions. */
export function withLimits(row: PersonRow, limits: readonly Limit[]): PersonRow {
  const written = limits.filter((each) => each.id !== "");
  const ids = written.map((each) => (each.until ? `${each.id}@${each.until}` : each.id)).join(" ");
  const any = written.some((each) => each.action !== "");
  const actions = any ? written.map((each) => each.action.replaceAll("|", "\\|")).join(" | ") : "";
  return withCell(withCell(row, "limits", ids), "actions", actions);
}

/** The action words of a row that hold on a day: what the floor sees. */
export function actionsOn(row: PersonRow, day: string): readonly string[] {
  return limitsOf(row)
    .filter((each) => each.until === "" || each.until >= day)
    .map((each) => each.action || "see the coach")
    .filter((action, index, all) => all.indexOf(action) === index);
}

/** Columns that are no marks. */
export const personColumns: readonly string[] = [
  "id", "name", "sex", "age", "birth_year", "mass_kg", "height_cm", "training_years", "limits", "actions", "attends",
];

/** Whether a column holds marks; a standing version ('push' = knee-push-up) is none. */
export const isMark = (column: string): boolean => !personColumns.includes(column) && /\s|^vo2max/.test(column);

/** An id for somebody new: the next of the gym's own kind (`a25` after `a24`), else made of the name. */
export function newId(rows: readonly PersonRow[], name: string): string {
  const taken = new Set(rows.map((row) => row["id"] ?? ""));
  const numbered = [...taken].map((id) => /^([a-z]+)(\d+)$/.exec(id));
  const last = numbered.reduce((most, met) => Math.max(most, met ? Number(met[2]) : 0), 0);
  const kind = numbered.find((met) => met !== null);
  if (kind && numbered.every((met) => met !== null && met[1] === kind[1]))
    return `${kind[1] ?? ""}${String(last + 1).padStart(kind[2]?.length ?? 1, "0")}`;
  const stem = name.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "") || "person";
  for (let n = 1; ; ++n) {
    const id = n === 1 ? stem : `${stem}-${n}`;
    if (!taken.has(id)) return id;
  }
}

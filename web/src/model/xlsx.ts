import { strFromU8, unzipSync } from "fflate";
import { Parser, type OpenTag } from "saxen";

/** A workbook that cannot be read, in words for whoever sent it. */
export class NoWorkbook extends Error {}

/** A sheet unpacked may be so large; nobody has as many people. */
const mostBytes = 20 * 1024 * 1024;

const wanted = /^xl\/(workbook\.xml|_rels\/workbook\.xml\.rels|sharedStrings\.xml|styles\.xml|worksheets\/[^/]+\.xml)$/;

function unpack(bytes: Uint8Array): Readonly<Record<string, Uint8Array>> {
  try {
    return unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (!wanted.test(name)) return false;
        if (originalSize > mostBytes) throw new NoWorkbook("the sheet is far too large for a table of people");
        return true;
      },
    });
  } catch (error) {
    if (error instanceof NoWorkbook) throw error;
    throw new NoWorkbook("the file is no XLSX workbook, or it is damaged");
  }
}

interface Heard {
  readonly open?: (name: string, attributes: Readonly<Record<string, string>>) => void;
  readonly text?: (words: string) => void;
  readonly close?: (name: string) => void;
}

/** Reads XML and tells what it meets; names come without their prefix. */
function hear(bytes: Uint8Array | undefined, heard: Heard): void {
  if (!bytes) return;
  const bare = (name: string): string => name.slice(name.indexOf(":") + 1);
  const parser = new Parser();
  const opened: OpenTag = (name, attributes, decode) => {
    const decoded = Object.entries(attributes()).map(([key, value]) => [key, decode(value)] as const);
    heard.open?.(bare(name), Object.fromEntries(decoded));
  };
  parser.on("openTag", opened);
  parser.on("closeTag", (name) => heard.close?.(bare(name)));
  parser.on("text", (words, decode) => heard.text?.(decode(words)));
  parser.on("cdata", (words) => heard.text?.(words));
  parser.on("error", () => {
    throw new NoWorkbook("the workbook is damaged");
  });
  parser.parse(strFromU8(bytes));
}

/** The part that holds the first sheet, as the workbook orders them. */
function firstSheet(parts: Readonly<Record<string, Uint8Array>>): Uint8Array {
  let id: string | undefined;
  hear(parts["xl/workbook.xml"], {
    open: (name, attributes) => {
      if (name === "sheet") id ??= attributes["r:id"];
    },
  });
  let target = "worksheets/sheet1.xml";
  hear(parts["xl/_rels/workbook.xml.rels"], {
    open: (name, attributes) => {
      if (name === "Relationship" && attributes["Id"] === id) target = attributes["Target"] ?? target;
    },
  });
  const sheet = parts[target.startsWith("/") ? target.slice(1) : `xl/${target}`];
  if (!sheet) throw new NoWorkbook("the workbook has no sheet");
  return sheet;
}

/** Texts that cells share; how they sound in another script (`rPh`) is left out. */
function sharedTexts(part: Uint8Array | undefined): readonly string[] {
  const texts: string[] = [];
  let at: string | null = null;
  let aside = false;
  hear(part, {
    open: (name) => {
      if (name === "si") texts.push("");
      else if (name === "rPh") aside = true;
      at = name;
    },
    text: (words) => {
      if (at === "t" && !aside) texts.push((texts.pop() ?? "") + words);
    },
    close: (name) => {
      if (name === "rPh") aside = false;
      at = null;
    },
  });
  return texts;
}

/** How a number is shown: as it is, as a time with hours, or as a time whose first part is minutes. */
type Shown = "number" | "h:mm" | "h:mm:ss" | "mm:ss";

/** Number formats that are built in and show a time: ECMA-376-1:2016, 18.8.30. */
const builtIn: Readonly<Record<number, Shown>> = { 18: "h:mm", 19: "h:mm:ss", 20: "h:mm", 21: "h:mm:ss", 22: "h:mm", 45: "mm:ss", 46: "h:mm:ss", 47: "mm:ss" };

function shownBy(code: string): Shown {
  const plain = code.toLowerCase().replace(/"[^"]*"|\\./g, "");
  if (/h/.test(plain)) return /s/.test(plain) ? "h:mm:ss" : "h:mm";
  return /m+\]?:s/.test(plain) ? "mm:ss" : "number";
}

/** How the cells of each style show a number. */
function shownByStyle(part: Uint8Array | undefined): readonly Shown[] {
  const own = new Map<number, Shown>();
  const styles: Shown[] = [];
  let inCells = false;
  hear(part, {
    open: (name, attributes) => {
      const format = Number(attributes["numFmtId"] ?? 0);
      if (name === "numFmt") own.set(format, shownBy(attributes["formatCode"] ?? ""));
      else if (name === "cellXfs") inCells = true;
      else if (name === "xf" && inCells) styles.push(own.get(format) ?? builtIn[format] ?? "number");
    },
    close: (name) => {
      if (name === "cellXfs") inCells = false;
    },
  });
  return styles;
}

/** A part of a day as a clock shows it; tenths only where there are any. */
function timeText(days: number, shown: "h:mm" | "h:mm:ss" | "mm:ss"): string {
  const tenths = Math.round(days * 864_000);
  const two = (value: number): string => String(value).padStart(2, "0");
  const minutes = Math.floor(tenths / 600);
  const seconds = two(Math.floor((tenths % 600) / 10)) + (tenths % 10 > 0 ? `.${String(tenths % 10)}` : "");
  if (shown === "mm:ss") return `${String(minutes)}:${seconds}`;
  const hours = `${String(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
  return shown === "h:mm" ? hours : `${hours}:${seconds}`;
}

/** The column of a cell's name, counted from 0: `A1` is 0, `AB7` is 27. */
function columnOf(cell: string): number {
  let column = 0;
  for (const letter of /^[A-Z]+/.exec(cell)?.[0] ?? "") column = column * 26 + letter.charCodeAt(0) - 64;
  return column - 1;
}

/** Columns that a sheet can have. */
const mostColumns = 16_384;

/**
 * The first sheet of an XLSX workbook (ECMA-376-1) as rows of cells, each as the sheet shows it: `1:39` stays `1:39`
 * though it is kept as a part of a day. Empty rows are kept, so that rows count as in the sheet. Throws `NoWorkbook`.
 */
export function rowsOfWorkbook(bytes: Uint8Array): readonly (readonly string[])[] {
  const parts = unpack(bytes);
  const sheet = firstSheet(parts);
  const texts = sharedTexts(parts["xl/sharedStrings.xml"]);
  const shown = shownByStyle(parts["xl/styles.xml"]);
  const rows: string[][] = [];
  let cell: { readonly column: number; readonly kind: string; readonly shown: Shown } | null = null;
  let inside: string | null = null;
  let said = "";
  const written = (kind: string, how: Shown): string => {
    if (kind === "s") return texts[Number(said)] ?? "";
    if (kind !== "n" || said === "" || how === "number") return said;
    return timeText(Number(said), how);
  };
  hear(sheet, {
    open: (name, attributes) => {
      inside = name;
      if (name === "row") {
        const number = Number(attributes["r"] ?? rows.length + 1);
        while (rows.length < number) rows.push([]);
      } else if (name === "c") {
        const column = attributes["r"] ? columnOf(attributes["r"]) : (rows.at(-1)?.length ?? 0);
        cell = { column, kind: attributes["t"] ?? "n", shown: shown[Number(attributes["s"] ?? 0)] ?? "number" };
        said = "";
      }
    },
    text: (words) => {
      if (cell && (inside === "v" || inside === "t")) said += words;
    },
    close: (name) => {
      inside = null;
      if (name !== "c" || !cell) return;
      const row = rows.at(-1);
      if (row && cell.column >= 0 && cell.column < mostColumns) {
        while (row.length < cell.column) row.push("");
        row[cell.column] = written(cell.kind, cell.shown).trim();
      }
      cell = null;
    },
  });
  return rows;
}

/** Rows as RFC 4180 has them; a row's line break within a cell becomes a space, so that rows and lines count alike. */
export function csvOf(rows: readonly (readonly string[])[]): string {
  const width = Math.max(0, ...rows.map((row) => row.length));
  const quoted = (cell: string): string => {
    const line = cell.replace(/\s*[\r\n]+\s*/g, " ");
    return /[",]/.test(line) ? `"${line.replaceAll('"', '""')}"` : line;
  };
  return rows.map((row) => Array.from({ length: width }, (_, at) => quoted(row[at] ?? "")).join(",") + "\r\n").join("");
}

/** Whether bytes begin as those of a workbook do: with a packed folder. */
export const isWorkbook = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b;

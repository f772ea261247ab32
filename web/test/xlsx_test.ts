import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { strToU8, zipSync } from "fflate";
import { csvOf, isWorkbook, NoWorkbook, rowsOfWorkbook } from "../src/model/xlsx.ts";

const xml = (text: string) => strToU8(`<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n${text}`);
const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';

/** A workbook with one sheet of those rows; formats are those of the styles 1 to 4. */
function workbook(rows: string, more: Record<string, Uint8Array> = {}): Uint8Array {
  return zipSync({
    "xl/workbook.xml": xml(
      `<workbook ${main} xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="People" sheetId="1" r:id="rId7"/></sheets></workbook>`,
    ),
    "xl/_rels/workbook.xml.rels": xml(
      '<Relationships><Relationship Id="rId7" Type="worksheet" Target="worksheets/people.xml"/></Relationships>',
    ),
    "xl/sharedStrings.xml": xml(
      `<sst ${main}><si><t>name</t></si><si><t>run 400 m</t></si><si><r><t>Jo </t></r><r><t>Invented</t></r><rPh><t>aside</t></rPh></si><si><t>A &amp; B</t></si></sst>`,
    ),
    "xl/styles.xml": xml(
      `<styleSheet ${main}><numFmts><numFmt numFmtId="164" formatCode="[mm]:ss.0"/></numFmts><cellStyleXfs><xf numFmtId="20"/></cellStyleXfs><cellXfs><xf numFmtId="0"/><xf numFmtId="20"/><xf numFmtId="21"/><xf numFmtId="45"/><xf numFmtId="164"/></cellXfs></styleSheet>`,
    ),
    "xl/worksheets/people.xml": xml(`<worksheet ${main}><sheetData>${rows}</sheetData></worksheet>`),
    ...more,
  });
}

test("cells come as the sheet shows them: shared and own texts, numbers, results of formulas, gaps", () => {
  const rows = rowsOfWorkbook(
    workbook(
      '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="C1" t="s"><v>1</v></c></row>' +
        '<row r="3"><c r="A3" t="s"><v>2</v></c><c r="B3"><v>37.5</v></c><c r="C3" t="inlineStr"><is><t>1:45</t></is></c><c r="D3" t="str"><f>A1&amp;"x"</f><v>namex</v></c></row>',
    ),
  );
  assert.deepEqual(rows, [["name", "", "run 400 m"], [], ["Jo Invented", "37.5", "1:45", "namex"]]);
});

test("a time is what was typed, though it is kept as a part of a day (ECMA-376-1:2016, 18.8.30 and 18.17.4)", () => {
  // 1:39 typed into a cell is kept as an hour and 39 minutes; 0:09:00 as nine minutes; both must come out as typed.
  const rows = rowsOfWorkbook(
    workbook(
      '<row r="1"><c r="A1" s="1"><v>0.06875</v></c><c r="B1" s="2"><v>0.00625</v></c><c r="C1" s="3"><v>1.1458333333333333E-3</v></c><c r="D1" s="4"><v>1.1516203703703703E-3</v></c></row>',
    ),
  );
  assert.deepEqual(rows, [["1:39", "0:09:00", "1:39", "1:39.5"]]);
});

test("rows and cells without their names are counted on", () => {
  assert.deepEqual(rowsOfWorkbook(workbook("<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>")), [["1", "2"], ["3"]]);
});

test("what is no workbook is refused in words", () => {
  const bad = /no XLSX workbook|damaged|no sheet/;
  assert.throws(() => rowsOfWorkbook(strToU8("name,sex\nJo,f\n")), bad);
  assert.throws(() => rowsOfWorkbook(zipSync({ "readme.txt": strToU8("no book") })), bad);
  assert.throws(() => rowsOfWorkbook(workbook("<row><c></row>")), bad);
  assert.throws(() => rowsOfWorkbook(workbook("", { "xl/worksheets/people.xml": strToU8("no xml <") })), NoWorkbook);
  assert.equal(isWorkbook(workbook("")), true);
  assert.equal(isWorkbook(strToU8("name,sex")), false);
});

test("rows become the lines of a table (RFC 4180), each row one line", () => {
  assert.equal(csvOf([["name", "actions"], [], ["Jo \"J\"", "no jumps, no hops\nfloor press"]]), 'name,actions\r\n,\r\n"Jo ""J""","no jumps, no hops floor press"\r\n');
});

test("a workbook that another program wrote is read as it shows (ExcelJS 4.4.0, tests/data/people.xlsx)", () => {
  const rows = rowsOfWorkbook(new Uint8Array(readFileSync("../tests/data/people.xlsx")));
  assert.deepEqual(rows, [
    ["name", "sex", "age", "attends", "run 400 m", "run 5 km", "max push-up", "1rm back squat"],
    ["Jo Invented", "f", "34", "mon wed", "1:39", "0:27:30", "22", "62.5"],
    ["Lé Invented", "q", "41", "sat", "1:39.5", "31:05", "many", "80"],
  ]);
});

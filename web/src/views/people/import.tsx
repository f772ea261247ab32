import { useId, useState } from "preact/hooks";
import type { Fault } from "../../model/fault.ts";
import type { BadCell, PeoplePreview, PeopleTable } from "../../model/people.ts";
import { mergePeople, type Merged } from "../../model/people_change.ts";
import { keepPeople } from "../../state/people.ts";
import { program } from "../../state/program.ts";
import { Said } from "../../ui/said.tsx";
import { count, listWords, sentence } from "../../ui/words.ts";

function BadCells({ bad }: { readonly bad: readonly BadCell[] }) {
  return (
    <Said weight="problem" alert>
      <p>
        <strong>{count(bad.length, "cell cannot be read", "cells cannot be read")}.</strong> Nothing was saved. Mend them in
        the table and choose it again.
      </p>
      <table class="bad-cells">
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">Who</th>
            <th scope="col">Column</th>
            <th scope="col">What</th>
          </tr>
        </thead>
        <tbody>
          {bad.map((cell) => (
            <tr key={`${cell.line} ${cell.column}`}>
              <td>{cell.line}</td>
              <td>{cell.row}</td>
              <td>{cell.column}</td>
              <td>{cell.text}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Said>
  );
}

function MergedWords({ merged }: { readonly merged: Merged }) {
  const line = (names: readonly string[], words: string) =>
    names.length > 0 ? (
      <li>
        <strong>{names.length}</strong> {words}: {listWords(names)}
      </li>
    ) : null;
  return (
    <ul class="plain tight">
      {line(merged.added, "new")}
      {line(merged.changed, "changed")}
      {line(merged.same, "as they are")}
    </ul>
  );
}

function Ready(props: { readonly preview: PeoplePreview; readonly table: PeopleTable; readonly done: () => void }) {
  const [fault, setFault] = useState<Fault | null>(null);
  const merged = mergePeople(props.table.rows, props.preview.rows ?? []);
  const nothing = merged.added.length + merged.changed.length === 0;
  const save = async () => {
    const failed = await keepPeople(merged.rows, props.table.version);
    setFault(failed);
    if (!failed) props.done();
  };
  return (
    <div class="stack">
      <p>Every cell can be read. Nothing is saved yet; whoever is not in the table stays as they are.</p>
      <MergedWords merged={merged} />
      {fault ? (
        <Said weight="problem" alert>
          {sentence(fault.text)}
        </Said>
      ) : null}
      <div class="row">
        <button type="button" class="first" disabled={nothing} onClick={() => void save()}>
          {nothing ? "Nothing to save" : `Save ${count(merged.added.length + merged.changed.length, "person", "people")}`}
        </button>
      </div>
    </div>
  );
}

const isFault = (value: BodyInit | Fault): value is Fault => typeof value === "object" && "status" in value;

const refusal = (text: string): Fault => ({ status: 400, text, line: null, column: null, field: null });

/** The table of a file as CSV: a workbook's first sheet, or the file as it is. What is no table is a fault. */
async function tableOf(file: Blob): Promise<BodyInit | Fault> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const { csvOf, isWorkbook, NoWorkbook, rowsOfWorkbook } = await import("../../model/xlsx.ts");
  // What is no UTF-8 is for the program to refuse by line, so it goes on as it came.
  if (!isWorkbook(bytes)) return file;
  try {
    return csvOf(rowsOfWorkbook(bytes));
  } catch (error) {
    if (error instanceof NoWorkbook) return refusal(error.message);
    throw error;
  }
}

/** Reads a table of people and shows all that is wrong with it before anything is saved. */
export function Import({ table, done }: { readonly table: PeopleTable; readonly done: () => void }) {
  const id = useId();
  const [preview, setPreview] = useState<PeoplePreview | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const look = async (file: Blob) => {
    const table = await tableOf(file);
    const answer = isFault(table) ? { ok: false as const, fault: table } : await program.previewPeople(table);
    setPreview(answer.ok ? answer.value : null);
    setFault(answer.ok ? null : answer.fault);
  };
  return (
    <section class="sheet stack" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>Import a table</h2>
      <div class="field">
        <label for={id}>Workbook (XLSX) or CSV file, with a header row: name, then what you know</label>
        <input
          id={id}
          type="file"
          accept=".xlsx,.csv,text/csv,application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
          onChange={(event) => {
            const file = event.currentTarget.files?.[0];
            if (file) void look(file);
          }}
        />
        <span class="small soft">
          For example: name, sex, age, attends, run 400 m, max push-up, row 500 m. Of a workbook the first sheet
          is read; in CSV comma or semicolon, point or decimal comma.
        </span>
      </div>
      {fault ? (
        <Said weight="problem" alert>
          {sentence(fault.text)}
        </Said>
      ) : null}
      {preview?.notes.map((note) => (
        <Said key={note} weight="note">
          {note}
        </Said>
      ))}
      {preview && preview.bad.length > 0 ? <BadCells bad={preview.bad} /> : null}
      {preview && preview.bad.length === 0 ? <Ready preview={preview} table={table} done={done} /> : null}
      <div class="row">
        <button type="button" onClick={done}>
          Close
        </button>
      </div>
    </section>
  );
}

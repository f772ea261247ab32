import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { notes, notesForClass, notesOn, noteWords, type Note } from "../src/model/notes.ts";
import { shortDay } from "../src/ui/words.ts";

const note = (number: number, person: string | null, more: Partial<Note> = {}): Note => ({
  number, person, text: `word ${number}`, until: null, by: "Mira", at: `2027-05-1${number}T06:00:00Z`, ...more,
});

test("the program's notes are read", () => {
  const { body } = JSON.parse(readFileSync("../tests/golden/api/notes.json", "utf8")) as { readonly body: unknown };
  assert.deepEqual(notes(body, "").map((each) => [each.person, each.text]), [["a07", "likes the end bar"]]);
});

test("a class is told of those who come and of nobody in particular, the newest first, and the others apart", () => {
  const all = [note(1, "a1"), note(2, "a2"), note(3, null), note(4, "a1")];
  const { here, elsewhere } = notesForClass(all, ["a1"]);
  assert.deepEqual(here.map((each) => each.number), [4, 3, 1]);
  assert.deepEqual(elsewhere.map((each) => each.number), [2]);
  assert.deepEqual(notesOn(all, "a1").map((each) => each.number), [4, 1]);
});

test("a note says who said it, when, and until when; a person's own words need no name", () => {
  assert.equal(noteWords(note(5, "a1", { until: "2027-06-30" }), shortDay), "by Mira, Sat 15 May, until Wed 30 Jun");
  assert.equal(noteWords(note(5, "a1", { by: "a1" }), shortDay), "Sat 15 May");
});

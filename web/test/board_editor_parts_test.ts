import assert from "node:assert/strict";
import { test } from "node:test";
import { coloursOf, doubtsInWords, placedDoubts, type ShownReading } from "../src/editor/colours.ts";
import { suggestionsFor, wordsBefore } from "../src/editor/completion.ts";
import { lineStretch, stretchesIn } from "../src/editor/places.ts";
import type { Diagnostic } from "../src/model/reading.ts";

const said = (stretch: { from: number; to: number }, text: string) => text.slice(stretch.from, stretch.to);

test("places count characters, also beyond the basic plane", () => {
  const text = "Thu 🏋\n🏋🏋 12 swngs";
  const stretch = stretchesIn(text);
  assert.equal(said(stretch({ line: 2, column: 4, length: 8 }), text), "12 swngs");
  assert.equal(said(stretch({ line: 1, column: 5, length: 1 }), text), "🏋");
});

test("places outside the text end where the text does", () => {
  const text = "5 RFT";
  assert.deepEqual(stretchesIn(text)({ line: 9, column: 9, length: 9 }), { from: 5, to: 5 });
  assert.equal(lineStretch(text, 2), null);
  assert.deepEqual(lineStretch("a\nbc\n", 2), { from: 2, to: 4 });
});

const doubt = (line: number, column: number, length: number, severity: Diagnostic["severity"]): Diagnostic => ({
  line,
  column,
  length,
  severity,
  text: "a doubt",
  name: "some-doubt",
  hint: "",
  repairs: [],
});

const reading: ShownReading = {
  text: "AMRAP 12, go hard\n9 pull-ups\n",
  understood: [
    { line: 1, column: 1, length: 8, as: "rule" },
    { line: 2, column: 1, length: 10, as: "step" },
    { line: 2, column: 1, length: 10, as: "rule" },
  ],
  doubts: [],
};

test("what was understood is coloured as it was, the rest as words, figures within work", () => {
  const colours = coloursOf(reading).map((each) => [each.as, said(each, reading.text)]);
  assert.deepEqual(colours, [
    ["rule", "AMRAP 12"],
    ["words", ", go hard"],
    ["step", "9 pull-ups"],
    ["number", "9"],
  ]);
});

test("a board of nothing but free text is words", () => {
  const colours = coloursOf({ text: "see you\n\n--", understood: [], doubts: [] });
  assert.deepEqual(colours, [{ from: 0, to: 7, as: "words" }]);
});

test("doubts stand in the order of the text, the graver first, and can be seen", () => {
  const placed = placedDoubts({
    ...reading,
    doubts: [doubt(2, 3, 8, "note"), doubt(2, 3, 8, "error"), doubt(1, 7, 0, "warning")],
  });
  assert.deepEqual(
    placed.map((each) => [each.doubt.severity, said(each, reading.text)]),
    [
      ["warning", "1"],
      ["error", "pull-ups"],
      ["note", "pull-ups"],
    ],
  );
});

test("doubts are counted in words", () => {
  assert.equal(doubtsInWords([]), "nothing doubtful");
  assert.equal(doubtsInWords([doubt(1, 1, 1, "note"), doubt(1, 1, 1, "error"), doubt(1, 1, 1, "error")]), "2 errors, 1 note");
});

const movements = [
  { id: "pull-up", name: "Pull-up, strict", aliases: ["pull-ups", "pull ups"] },
  { id: "push-up", name: "Push-up", aliases: ["push-ups", "press-ups"] },
  { id: "kb-swing", name: "Kettlebell swing", aliases: ["swings", "kb swings"] },
  { id: "wall-ball", name: "Wall ball", aliases: ["wall balls"] },
];
const words = (typed: string) => suggestionsFor(typed, movements).map((each) => each.word);

test("the words being typed begin after the last figure or separator", () => {
  assert.deepEqual(wordsBefore("12 wall ba"), { from: 3, words: "wall ba" });
  assert.deepEqual(wordsBefore("10 squats, 9 pu"), { from: 13, words: "pu" });
  assert.equal(wordsBefore("12 ").words, "");
});

test("movements are suggested by the start of any of their words, the closest first", () => {
  assert.deepEqual(words("pu"), ["pull-ups", "push-ups"]);
  assert.deepEqual(words("swing"), ["swings"]);
  assert.deepEqual(words("ball"), ["Wall ball"].map(() => "wall balls"));
  assert.deepEqual(words("ups"), ["pull-ups", "push-ups"]);
});

test("nothing is suggested for one letter, a unit or a word of the clock", () => {
  assert.deepEqual(words("p"), []);
  assert.deepEqual(words("min"), []);
  assert.deepEqual(words("Rounds"), []);
});

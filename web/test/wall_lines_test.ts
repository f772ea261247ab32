import assert from "node:assert/strict";
import { test } from "node:test";
import { laidOut, lettersFor, pageAt, pagesOf } from "../src/model/wall_lines.ts";

const tv = lettersFor(1920, 1080);

/** Lines of so many letters, half as wide as high, in a room 1300 wide. */
const measured = (letters: readonly number[]) => (size: number, columns: number) =>
  letters.map((count) => Math.ceil((count * size * 0.5) / (1300 / columns)) * size * 1.1);

test("pages hold every line once and in order, as many as their columns have room for", () => {
  assert.deepEqual(pagesOf([40, 40, 40, 40, 40], 100, 1), [[[0, 1]], [[2, 3]], [[4]]]);
  assert.deepEqual(pagesOf([40, 40, 40, 40, 40], 100, 2), [[[0, 1], [2, 3]], [[4]]]);
  assert.deepEqual(pagesOf([300, 40], 100, 1), [[[0]], [[1]]]);
  assert.deepEqual(pagesOf([], 100, 1), []);
});

test("few lines are as large as 15 m ask for, more get smaller and all stand at once", () => {
  const room = { high: 300, sign: 45, columns: 2 };
  const one = laidOut(measured([10]), room, tv);
  assert.equal(one.size, tv.most);
  const four = laidOut(measured([30, 28, 30, 26]), room, tv);
  assert.equal(four.pages.length, 1);
  assert.ok(four.size < one.size && four.size >= tv.least);
});

test("what does not stand at once stands in turn, in the smallest letters that are read from afar, above the sign", () => {
  const letters = [20, 30, 55, 60, 20, 30, 40, 18, 22, 61];
  const laid = laidOut(measured(letters), { high: 300, sign: 45, columns: 1 }, tv);
  assert.equal(laid.size, tv.least);
  assert.ok(laid.pages.length > 1);
  assert.deepEqual(laid.pages.flat(2), letters.map((_, line) => line));
  const heights = measured(letters)(laid.size, laid.columns);
  for (const column of laid.pages.flat())
    assert.ok(column.reduce((high, line) => high + (heights[line] ?? 0), 0) <= 255, "a column fits above the sign");
});

test("a single line that fills the room is made smaller rather than cut", () => {
  const laid = laidOut(measured([400, 10]), { high: 300, sign: 45, columns: 1 }, tv);
  assert.ok(laid.size < tv.least);
  assert.ok(measured([400, 10])(laid.size, laid.columns).every((height) => height <= 255));
});

// A 55-inch screen of 1080 lines is 685 mm high; 16 minutes of arc are the least of ISO 9241-303 (from memory).
test("capitals are 16 minutes of arc at 15 m where there is room, and at 6 m at the least", () => {
  const capMm = (size: number) => (size * 0.668 * 685) / 1080;
  const arc = (mm: number, metres: number) => ((mm / 1000 / metres) * 180 * 60) / Math.PI;
  assert.ok(arc(capMm(tv.most), 15) >= 16, `${arc(capMm(tv.most), 15)}`);
  assert.ok(arc(capMm(tv.least), 6) >= 16, `${arc(capMm(tv.least), 6)}`);
  assert.equal(lettersFor(390, 844).least, 18);
});

test("all screens turn the page at the same instant", () => {
  assert.equal(pageAt(1_810_000_000_123, 1), 0);
  const turn = 7000;
  assert.deepEqual([0, 1, 2, 3].map((step) => pageAt(step * turn + 1, 3)), [0, 1, 2, 0]);
});

import assert from "node:assert/strict";
import { test } from "node:test";
import { dropDraft, idFromWords, keepDraft, opening, takeDraft, type DraftShelf } from "../src/editor/draft.ts";
import { savedWords } from "../src/views/board/board_head.tsx";

function shelf(kept = new Map<string, string>()): DraftShelf {
  return {
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => {
      kept.set(key, value);
    },
    removeItem: (key) => {
      kept.delete(key);
    },
  };
}

const full: DraftShelf = {
  getItem: () => {
    throw new Error("no room");
  },
  setItem: () => {
    throw new Error("no room");
  },
  removeItem: () => {
    throw new Error("no room");
  },
};

test("a draft survives, each board has its own, and it can be dropped", () => {
  const kept = shelf();
  assert.ok(keepDraft(kept, "thursday", { text: "5 RFT", version: "a1" }));
  assert.deepEqual(takeDraft(kept, "thursday"), { text: "5 RFT", version: "a1" });
  assert.equal(takeDraft(kept, "friday"), null);
  dropDraft(kept, "thursday");
  assert.equal(takeDraft(kept, "thursday"), null);
});

test("a browser that keeps nothing is said, not a fault", () => {
  assert.equal(keepDraft(full, "thursday", { text: "5 RFT", version: null }), false);
  assert.equal(takeDraft(full, "thursday"), null);
  dropDraft(full, "thursday");
});

test("what is no draft is passed over", () => {
  const strange = shelf(new Map([["repwright.draft.thursday", '{"text": 5}'], ["repwright.draft.friday", "{"]]));
  assert.equal(takeDraft(strange, "thursday"), null);
  assert.equal(takeDraft(strange, "friday"), null);
});

test("opening shows the kept text, the draft made from it, or both when both changed", () => {
  const kept = { text: "5 RFT", version: "a1" };
  assert.deepEqual(opening(kept, null), { kind: "kept", ...kept });
  assert.equal(opening(kept, { text: "5 RFT", version: "old" }).kind, "kept");
  assert.deepEqual(opening(kept, { text: "6 RFT", version: "a1" }), { kind: "draft", text: "6 RFT", version: "a1" });
  assert.deepEqual(opening(kept, { text: "6 RFT", version: "a0" }), {
    kind: "both-changed",
    text: "6 RFT",
    version: "a0",
    theirs: "5 RFT",
    theirVersion: "a1",
  });
});

test("ids of boards come from their words", () => {
  assert.equal(idFromWords("Tue pairs, 60'"), "tue-pairs-60");
  assert.equal(idFromWords("Été à vélo"), "ete-a-velo");
  assert.equal(idFromWords("…"), "board");
  assert.ok(idFromWords("a ".repeat(200)).length <= 60);
});

test("a board with errors is said to be saved as a draft that is not rehearsed", () => {
  assert.equal(savedWords("saved", 0), "Saved");
  assert.equal(savedWords("saved", 1), "Saved as a draft: with an error on it no class is rehearsed");
  assert.match(savedWords("changed", 2), /^Not saved yet.*With 2 errors on it, it is saved as a draft that is not rehearsed$/);
  assert.equal(savedWords("saving", 2), "Saving…");
});

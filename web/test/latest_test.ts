import assert from "node:assert/strict";
import { test } from "node:test";
import { latest, type Waits } from "../src/editor/latest.ts";

/** Waits that end when the test says so. */
function heldWaits(): Waits & { pass(): void } {
  const waiting = new Map<number, () => void>();
  let count = 0;
  return {
    start: (_, then) => {
      waiting.set(++count, then);
      return count;
    },
    stop: (wait) => {
      waiting.delete(wait);
    },
    pass: () => {
      for (const [wait, then] of [...waiting]) {
        waiting.delete(wait);
        then();
      }
    },
  };
}

function asked() {
  const questions: { question: string; answer: (value: string) => void; signal: AbortSignal }[] = [];
  const answered: string[] = [];
  const waits = heldWaits();
  const asker = latest<string, string>({
    ask: (question, signal) =>
      new Promise((answer) => {
        questions.push({ question, answer, signal });
      }),
    answered: (answer, question) => {
      answered.push(`${question}: ${answer}`);
    },
    pause: 10,
    waits,
  });
  return { questions, answered, waits, asker };
}

const settled = () => new Promise((done) => setImmediate(done));

test("only the last of many questions is asked", () => {
  const { questions, waits, asker } = asked();
  for (const letter of ["s", "sw", "swi"]) asker.ask(letter);
  waits.pass();
  assert.deepEqual(
    questions.map((each) => each.question),
    ["swi"],
  );
});

test("an answer to an older question is dropped and its request given up", async () => {
  const { questions, answered, waits, asker } = asked();
  asker.ask("old");
  waits.pass();
  asker.ask("new");
  waits.pass();
  assert.ok(questions[0]?.signal.aborted);
  questions[1]?.answer("second");
  questions[0]?.answer("first");
  await settled();
  assert.deepEqual(answered, ["new: second"]);
});

test("what is asked at once does not wait, and drops what was waiting", () => {
  const { questions, waits, asker } = asked();
  asker.ask("typed");
  asker.askNow("switched");
  waits.pass();
  assert.deepEqual(
    questions.map((each) => each.question),
    ["switched"],
  );
});

test("after a stop nothing comes", async () => {
  const { questions, answered, waits, asker } = asked();
  asker.ask("one");
  waits.pass();
  asker.stop();
  questions[0]?.answer("late");
  await settled();
  assert.deepEqual(answered, []);
});

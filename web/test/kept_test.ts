import assert from "node:assert/strict";
import { mock, test } from "node:test";
import { Kept } from "../src/state/kept.ts";

const settled = async () => {
  for (let i = 0; i < 5; ++i) await Promise.resolve();
};

function counting(pause: number) {
  let asked = 0;
  const kept = new Kept(() => Promise.resolve({ ok: true as const, value: ++asked }), ["scores"], pause);
  return { kept, asked: () => asked };
}

test("a change is looked at at once, and only if somebody looked before", async () => {
  const { kept, asked } = counting(0);
  kept.heard("scores");
  assert.equal(asked(), 0);
  await kept.lookAgain();
  kept.heard("scores");
  kept.heard("hall");
  await settled();
  assert.equal(asked(), 2);
});

test("many changes of what takes a rehearsal are gathered into one question", async () => {
  mock.timers.enable(["setTimeout"]);
  const { kept, asked } = counting(1500);
  await kept.lookAgain();
  for (let i = 0; i < 20; ++i) kept.heard("scores");
  assert.equal(asked(), 1);
  mock.timers.tick(1500);
  await settled();
  assert.equal(asked(), 2);
  mock.timers.reset();
});

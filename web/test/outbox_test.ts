import assert from "node:assert/strict";
import { test } from "node:test";
import { Client } from "../src/api/client.ts";
import { fateOf, outboxOf, pauseAfter, refusals, waiting } from "../src/model/outbox.ts";
import { Sender, type Shelf } from "../src/state/outbox.ts";

/** A shelf that a test can look into. */
function shelf(): Shelf & { readonly kept: Map<string, string> } {
  const kept = new Map<string, string>();
  return {
    kept,
    keys: () => [...kept.keys()],
    read: (key) => kept.get(key) ?? null,
    write: (key, value) => kept.set(key, value),
    remove: (key) => kept.delete(key),
  };
}

/** A program that answers, is gone, or is killed after it kept something and before it said so. */
function program() {
  const kept = new Map<string, unknown>();
  const order: string[] = [];
  let mode: "there" | "gone" | "killed" | "refuses" = "there";
  const client = new Client((_, how) => {
    if (mode === "gone") return Promise.reject(new TypeError("refused"));
    const body = JSON.parse(String(how.body)) as { key: string; score: string };
    if (mode === "refuses")
      return Promise.resolve(new Response('{"error": {"text": "no person is called so"}}', { status: 400 }));
    if (!kept.has(body.key)) order.push(body.score);
    kept.set(body.key, body);
    if (mode === "killed") return Promise.reject(new TypeError("reset"));
    return Promise.resolve(new Response('{"number": 1}'));
  });
  return { kept, order, client, turn: (to: typeof mode) => (mode = to) };
}

function made(place = shelf(), account = "Kim") {
  const served = program();
  let count = 0;
  let clock = 1000;
  const timers: (() => void)[] = [];
  const sender = new Sender({
    client: served.client,
    shelf: place,
    now: () => ++clock,
    newKey: () => `k${++count}-${Math.random()}`,
    later: (then) => {
      timers.push(then);
      return () => timers.splice(timers.indexOf(then), 1);
    },
  });
  sender.open(account);
  return { sender, place, served, timers };
}

const settled = async () => {
  for (let i = 0; i < 60; ++i) await new Promise((done) => setImmediate(done));
};
const score = (text: string) => ({ path: "/api/classes/c/scores", how: "POST" as const, body: { score: text }, words: text });

test("an entry is delivered and leaves nothing behind", async () => {
  const { sender, place, served } = made();
  sender.send(score("22:10"));
  await settled();
  assert.deepEqual(served.order, ["22:10"]);
  assert.equal(place.kept.size, 0);
  assert.deepEqual(sender.outbox.value, []);
});

test("entries wait while the program is gone, and come in order when it is back", async () => {
  const { sender, served } = made();
  served.turn("gone");
  for (const each of ["1:00", "2:00", "3:00"]) sender.send(score(each));
  await settled();
  assert.equal(waiting(sender.outbox.value).length, 3);
  served.turn("there");
  sender.tryNow();
  await settled();
  assert.deepEqual(served.order, ["1:00", "2:00", "3:00"]);
});

test("what was kept but not answered is sent again and kept once", async () => {
  const { sender, served, timers } = made();
  served.turn("killed");
  sender.send(score("22:10"));
  await settled();
  assert.equal(waiting(sender.outbox.value).length, 1);
  served.turn("there");
  timers.at(-1)?.();
  await settled();
  assert.deepEqual(served.order, ["22:10"]);
  assert.deepEqual(sender.outbox.value, []);
});

test("entries survive a reload of the page", async () => {
  const place = shelf();
  const first = made(place);
  first.served.turn("gone");
  first.sender.send(score("1:00"));
  first.sender.send(score("2:00"));
  await settled();
  const second = made(place);
  await settled();
  assert.deepEqual(second.served.order, ["1:00", "2:00"]);
  assert.equal(place.kept.size, 0);
});

test("another account on the same device sends nothing of the first one's", async () => {
  const place = shelf();
  const first = made(place);
  first.served.turn("gone");
  first.sender.send(score("1:00"));
  await settled();
  const second = made(place, "Lou");
  await settled();
  assert.deepEqual(second.sender.outbox.value, []);
  assert.deepEqual(second.served.order, []);
  assert.equal(place.kept.size, 1);
});

test("a refused entry steps aside, is told with its reason, and can be thrown away", async () => {
  const { sender, served, place } = made();
  served.turn("refuses");
  const key = sender.send(score("22:10"));
  await settled();
  assert.deepEqual(
    refusals(sender.outbox.value).map((each) => each.refused),
    ["no person is called so"],
  );
  served.turn("there");
  sender.send(score("21:00"));
  await settled();
  assert.deepEqual(served.order, ["21:00"]);
  assert.equal(sender.takeBack(key), true);
  assert.equal(place.kept.size, 0);
});

test("what may be taken back is not sent before, and holds up nothing else", async () => {
  const { sender, served, timers } = made();
  const held = sender.send({ ...score("9:59"), hold: 10_000 });
  sender.send(score("22:10"));
  await settled();
  assert.deepEqual(served.order, ["22:10"]);
  assert.equal(sender.takeBack(held), true);
  timers.at(-1)?.();
  await settled();
  assert.deepEqual(served.order, ["22:10"]);
  assert.equal(sender.takeBack(held), false);
});

test("only what may be answered otherwise later is tried again", () => {
  assert.deepEqual([200, 204].map(fateOf), ["delivered", "delivered"]);
  assert.deepEqual([0, 401, 429, 500, 503, 507].map(fateOf), Array(6).fill("again"));
  assert.deepEqual([400, 403, 404, 409, 501].map(fateOf), Array(5).fill("refused"));
});

test("pauses grow and stay bearable", () => {
  const pauses = [0, 1, 2, 3, 9].map(pauseAfter);
  assert.deepEqual([...pauses].sort((a, b) => a - b), pauses);
  assert.ok((pauses.at(-1) ?? 0) <= 10_000);
});

test("what cannot be read on the device is left out", () => {
  assert.deepEqual(outboxOf(["{", '{"key": 3}', ""]), []);
});

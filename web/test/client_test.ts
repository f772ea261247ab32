import assert from "node:assert/strict";
import { test } from "node:test";
import { Client } from "../src/api/client.ts";
import { questions } from "../src/api/questions.ts";

const answering = (status: number, body: string) => new Client(() => Promise.resolve(new Response(body, { status })));

test("a refusal comes back as a value with its place", async () => {
  const answer = await questions(
    answering(400, '{"error": {"text": "is no time", "line": 3, "column": 7, "field": "text"}}'),
  ).rehearse({ text: "run" });
  assert.deepEqual(answer, {
    ok: false,
    fault: { status: 400, text: "is no time", line: 3, column: 7, field: "text" },
  });
});

test("a program that is gone is a fault, not an exception", async () => {
  const answer = await questions(new Client(() => Promise.reject(new TypeError("refused")))).gym();
  assert.equal(answer.ok, false);
  assert.equal(!answer.ok && answer.fault.status, 0);
});

test("an answer that is no JSON is a fault that says so", async () => {
  const answer = await questions(answering(200, "<html>")).gym();
  assert.match(answer.ok ? "" : answer.fault.text, /cannot be read/);
});

test("an answer of another shape is a fault that says where", async () => {
  const answer = await questions(answering(200, '{"name": 3}')).gym();
  assert.match(answer.ok ? "" : answer.fault.text, /name is 3, expected a text/);
});

test("a change carries the version that was looked at, and a new thing none", async () => {
  const sent: unknown[] = [];
  const ask = questions(
    new Client((_, how) => {
      sent.push(JSON.parse(String(how.body)));
      return Promise.resolve(new Response('{"version": "2"}'));
    }),
  );
  await ask.keepBoard("a", "5 RFT", "1");
  await ask.keepBoard("b", "5 RFT", null);
  assert.deepEqual(sent, [{ text: "5 RFT", version: "1" }, { text: "5 RFT" }]);
});

import assert from "node:assert/strict";
import { test } from "node:test";
import { routeOf } from "../src/state/route.ts";
import { ticketIn } from "../src/state/session.ts";

test("addresses name views and what they show", () => {
  assert.deepEqual(routeOf("/"), { view: "next-class", id: null });
  assert.deepEqual(routeOf("/class/sat-24"), { view: "next-class", id: "sat-24" });
  assert.deepEqual(routeOf("/people"), { view: "people", id: null });
  assert.deepEqual(routeOf("/people/a07"), { view: "people", id: "a07" });
  assert.deepEqual(routeOf("/board/sat-two-clocks"), { view: "board", id: "sat-two-clocks" });
  assert.deepEqual(routeOf("/classes/new"), { view: "new-class", id: null });
  assert.deepEqual(routeOf("/classes/sat-24"), { view: "class-plan", id: "sat-24" });
  assert.deepEqual(routeOf("/house"), { view: "house", id: null });
  assert.deepEqual(routeOf("/trail"), { view: "trail", id: null });
  assert.deepEqual(routeOf("/people/a07/more"), { view: "nowhere", id: null });
});

test("links of the terminal, of a person, of one class and of a screen are tickets", () => {
  assert.deepEqual(ticketIn("#owner=ab_C-1"), { kind: "owner", token: "ab_C-1" });
  assert.deepEqual(ticketIn("#person=x"), { kind: "person", token: "x" });
  assert.deepEqual(ticketIn("#class=x"), { kind: "class", token: "x" });
  assert.deepEqual(ticketIn("#screen=x"), { kind: "screen", token: "x" });
  assert.equal(ticketIn("#coach=x"), null);
  assert.equal(ticketIn("#main"), null);
  assert.equal(ticketIn("#owner="), null);
});

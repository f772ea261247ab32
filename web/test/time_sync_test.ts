import assert from "node:assert/strict";
import { test } from "node:test";
import { TimeSync } from "../src/model/time_sync.ts";

/** The same numbers between 0 and 1 in every run. */
function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** A device whose clock is off and drifts, on a way that takes 20 to 300 ms there and back. */
class Device {
  readonly sync = new TimeSync();
  constructor(
    private readonly off: number,
    private readonly drift: number,
    private readonly random: () => number,
  ) {}
  local(program: number): number {
    return program + this.off + this.drift * program;
  }
  probe(program: number): void {
    const there = 20 + 280 * this.random();
    const back = 20 + 280 * this.random();
    this.sync.add({ asked: this.local(program - there), program: Math.floor(program), heard: this.local(program + back) });
  }
  errorAt(program: number): number {
    return (this.sync.at(this.local(program))?.time ?? Infinity) - program;
  }
}

const devices = () =>
  [
    [7000, 2e-4],
    [-7000, -2e-4],
    [-3210, 5e-5],
    [0, 0],
  ].map(([off, drift], index) => new Device(off ?? 0, drift ?? 0, chance(index + 1)));

test("knows nothing before the first answer", () => {
  assert.equal(new TimeSync().at(5), null);
});

test("is off by half of the way there and back at most, and says so", () => {
  const sync = new TimeSync();
  sync.add({ asked: 1000, program: 5000, heard: 1080 });
  const known = sync.at(1080);
  assert.ok(known);
  assert.ok(Math.abs(known.time - 5040.5) < 1e-9);
  assert.equal(known.within, 40);
});

test("keeps four devices within 50 ms for an hour of uneven delays, offsets of 7 s and drift, without one drifting off", () => {
  const all = devices();
  let now = 1000;
  for (let i = 0; i < 20; ++i, now += 300) all.forEach((each) => each.probe(now));
  let worst = 0;
  for (; now < 3_600_000; now += 2000) {
    all.forEach((each) => each.probe(now));
    const errors = all.map((each) => each.errorAt(now + 1000));
    worst = Math.max(worst, Math.max(...errors) - Math.min(...errors));
  }
  assert.ok(worst <= 50, `spread ${worst.toFixed(1)} ms`);
});

test("goes on alone for ten minutes after an hour with the program, its drift known", () => {
  const all = devices();
  let now = 1000;
  for (; now < 3_600_000; now += 2000) all.forEach((each) => each.probe(now));
  const errors = all.map((each) => each.errorAt(now + 600_000));
  assert.ok(Math.max(...errors) - Math.min(...errors) <= 50, errors.map((each) => each.toFixed(1)).join(", "));
});

test("starts anew when a device slept or the program's clock was set", () => {
  const device = new Device(1000, 0, chance(9));
  for (let now = 0; now < 200_000; now += 5000) device.probe(now);
  device.sync.add({ asked: 500_000, program: 900_000, heard: 500_040 });
  assert.ok(Math.abs((device.sync.at(500_040)?.time ?? 0) - 900_020) < 5);
});

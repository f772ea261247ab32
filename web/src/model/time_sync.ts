/** How this device learns what time it is for the program, over a way that is slow and uneven. */

/** One question for the time: the device's clock when it was asked and when it was answered, the program's between. */
export interface Probe {
  readonly asked: number;
  readonly program: number;
  readonly heard: number;
}

/** The program's time, and how far off it may be. */
export interface Instant {
  readonly time: number;
  readonly within: number;
}

const bucketMs = 20_000;
const windowMs = 600_000;
const driftAfterMs = 150_000; // sooner the bounds of a slow way leave too much room for a slope
const steadyMs = 60_000; // so long even a bad clock drifts by no more than a few milliseconds
const mostDrift = 1e-3; // a quartz is off by 1e-4 at worst; this leaves room for clocks that somebody slews
const stepMs = 60;
const halfMs = 0.5; // the program says whole milliseconds

// The program read its clock after it was asked and before it answered. So what it is ahead of the device lies between
// these two (F. Cristian, 1989, Distributed Computing 3:146-158, DOI 10.1007/BF01784024).
const least = (probe: Probe) => probe.program - probe.heard;
const most = (probe: Probe) => probe.program - probe.asked;

/** What the program is ahead at `t0` and how fast that grows; `room` is how far apart the bounds are. */
interface Line {
  readonly ahead: number;
  readonly drift: number;
  readonly room: number;
}

function lineOf(probes: readonly Probe[], drift: number, t0: number): Line {
  const low = Math.max(...probes.map((each) => least(each) - drift * (each.heard - t0)));
  const high = Math.min(...probes.map((each) => most(each) - drift * (each.asked - t0)));
  return { ahead: (low + high) / 2 + halfMs, drift, room: high - low };
}

/**
 * The line through the bounds of all probes that keeps farthest from them. The room that a slope leaves is a concave
 * function of the slope, so that thirds find its top.
 */
function widest(probes: readonly Probe[], t0: number): Line {
  let low = -mostDrift;
  let high = mostDrift;
  for (let i = 0; i < 30; ++i) {
    const a = lineOf(probes, low + (high - low) / 3, t0);
    const b = lineOf(probes, high - (high - low) / 3, t0);
    if (a.room < b.room) low = a.drift;
    else high = b.drift;
  }
  return lineOf(probes, (low + high) / 2, t0);
}

/** Of each twenty seconds the two probes that say most: the quickest way there, and the quickest back. */
function thinned(probes: readonly Probe[], now: number): readonly Probe[] {
  const best = new Map<number, { low: Probe; high: Probe }>();
  for (const probe of probes) {
    if (now - probe.heard > windowMs) continue;
    const bucket = Math.floor(probe.heard / bucketMs);
    const known = best.get(bucket);
    best.set(bucket, {
      low: known && least(known.low) >= least(probe) ? known.low : probe,
      high: known && most(known.high) <= most(probe) ? known.high : probe,
    });
  }
  return [...new Set([...best.values()].flatMap(({ low, high }) => [low, high]))].sort((a, b) => a.heard - b.heard);
}

export class TimeSync {
  private probes: readonly Probe[] = [];
  private line: Line | null = null;
  private t0 = 0;

  add(probe: Probe): void {
    // A clock that stood still or was set meanwhile: what was known before is worth nothing.
    const known = this.at(probe.heard);
    const ahead = known ? known.time - probe.heard : 0;
    const stepped = known !== null && (ahead < least(probe) - stepMs || ahead > most(probe) + stepMs);
    this.probes = thinned([...(stepped ? [] : this.probes), probe], probe.heard);
    this.t0 = probe.heard;
    const span = probe.heard - (this.probes[0]?.heard ?? probe.heard);
    const latest = this.probes.filter((each) => probe.heard - each.heard < steadyMs);
    this.line = span < driftAfterMs ? lineOf(latest, 0, this.t0) : widest(this.probes, this.t0);
  }

  /** The program's time when the device's clock says `local`; null before the first answer. */
  at(local: number): Instant | null {
    if (this.line === null) return null;
    const { ahead, drift, room } = this.line;
    return { time: local + ahead + drift * (local - this.t0), within: Math.abs(room) / 2 };
  }
}

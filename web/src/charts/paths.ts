import type { Axis } from "./axis.ts";
import type { Kind } from "./kinds.ts";
import type { Lane } from "./lanes.ts";

const places = (value: number): string => String(Math.round(value * 10) / 10);

const bar = (x: number, width: number, y: number, height: number): string =>
  `M${places(x)} ${y}h${places(width)}v${height}h${places(-width)}z`;

/** Rest and wait are drawn lower than work, so that they differ by more than colour. */
const inset: Readonly<Partial<Record<Kind, number>>> = { rest: 0.3, wait: 0.12 };

/**
 * One SVG path per kind of a lane: a person's hour is a handful of elements, however many sets it has. Stretches
 * thinner than half a pixel are widened to it, rests thinner than that are left out.
 */
export function lanePaths(lane: Lane, axis: Axis, height: number): ReadonlyMap<Kind, string> {
  const paths = new Map<Kind, string>();
  for (const bit of lane.bits) {
    if (bit.to <= axis.from || bit.from >= axis.to) continue;
    const x = axis.at(bit.from);
    const width = axis.at(bit.to) - x;
    if (bit.kind === "rest" && width < 0.5) continue;
    const edge = Math.round(height * (inset[bit.kind] ?? 0));
    const drawn = bar(x, Math.max(width, 0.5), edge, height - 2 * edge);
    paths.set(bit.kind, (paths.get(bit.kind) ?? "") + drawn);
  }
  return paths;
}

/** A queue over time as a filled curve with steps; `most` people fill the height. */
export function queuePath(queue: readonly (readonly [number, number])[], axis: Axis, height: number, most: number): string {
  if (queue.length === 0 || most <= 0) return "";
  const y = (waiting: number): string => places(height - (Math.min(waiting, most) / most) * height);
  const [first] = queue;
  let path = `M${places(axis.at(first?.[0] ?? 0))} ${height}`;
  for (const [second, waiting] of queue) path += `H${places(axis.at(second))}V${y(waiting)}`;
  return `${path}V${height}z`;
}

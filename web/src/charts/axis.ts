/** A stretch of the class, in seconds from its start. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Turns seconds of the class into pixels, and says where the axis has its ticks. */
export interface Axis extends Stretch {
  readonly width: number;
  readonly ticks: readonly number[];
  /** The pixel of a second; those outside the stretch lie on its edge. */
  at(second: number): number;
  second(pixel: number): number;
}

const tickMinutes = [1, 2, 5, 10, 15, 20, 30, 60, 120];

/** An axis over a stretch of at least a minute, with whole minutes at least `apart` pixels from each other. */
export function axisOf(stretch: Stretch, width: number, apart = 44): Axis {
  const { from } = stretch;
  const to = Math.max(from + 60, stretch.to);
  const scale = width / (to - from);
  const every = (tickMinutes.find((each) => each * 60 * scale >= apart) ?? 240) * 60;
  const ticks: number[] = [];
  for (let second = Math.ceil(from / every) * every; second <= to; second += every) ticks.push(second);
  return {
    from,
    to,
    width,
    ticks,
    at: (second) => (Math.min(Math.max(second, from), to) - from) * scale,
    second: (pixel) => from + (scale > 0 ? pixel / scale : 0),
  };
}

/** Height of a lane so that a class is seen whole where that leaves it legible. */
export function laneHeight(people: number): number {
  if (people <= 16) return 28;
  if (people <= 30) return 22;
  return 18;
}

/** Turns seconds of the class into pixels, and says where the axis has its ticks. */
export interface Axis {
  readonly end: number;
  readonly width: number;
  readonly ticks: readonly number[];
  at(second: number): number;
  second(pixel: number): number;
}

const tickMinutes = [1, 2, 5, 10, 15, 20, 30, 60, 120];

/** An axis from the start of the class to `end`, with whole minutes at least `apart` pixels from each other. */
export function axisOf(end: number, width: number, apart = 44): Axis {
  const whole = Math.max(60, end);
  const scale = width / whole;
  const minutes = tickMinutes.find((each) => each * 60 * scale >= apart) ?? 240;
  const ticks: number[] = [];
  for (let second = 0; second <= whole; second += minutes * 60) ticks.push(second);
  return {
    end: whole,
    width,
    ticks,
    at: (second) => Math.min(Math.max(second, 0), whole) * scale,
    second: (pixel) => (scale > 0 ? pixel / scale : 0),
  };
}

/** Height of a lane so that a class is seen whole where that leaves it legible. */
export function laneHeight(people: number): number {
  if (people <= 16) return 28;
  if (people <= 30) return 22;
  return 18;
}

/** Numbers of lines: pages of columns of lines. */
export type Pages = readonly (readonly (readonly number[])[])[];

/**
 * Lines of those heights put into columns of `room`, so many columns a page, in order. A line higher than a column has
 * one of its own.
 */
export function pagesOf(heights: readonly number[], room: number, columns: number): Pages {
  const all: number[][] = [];
  let left = 0;
  for (const [line, height] of heights.entries()) {
    if (all.length === 0 || height > left) {
      all.push([]);
      left = room;
    }
    all.at(-1)?.push(line);
    left -= height;
  }
  return Array.from({ length: Math.ceil(all.length / columns) }, (_, page) => all.slice(page * columns, (page + 1) * columns));
}

/** How lines are drawn: letters of so many pixels, so many columns beside each other, the lines of each page. */
export interface Laid {
  readonly size: number;
  readonly columns: number;
  readonly pages: Pages;
}

const columnsOfPage = 2;
const shrink = 0.96;
const smallest = 8;

/** What lines are laid into. */
export interface Room {
  readonly high: number;
  /** How much of it the sign takes that there are more pages. */
  readonly sign: number;
  /** As many columns at most, where all lines stand at once. */
  readonly columns: number;
}

/**
 * The largest letters in which all lines stand at once, down to the least; where they do not, pages of the least letters
 * in turn, as few as can be. `measure` says how high each line is in letters of that size and columns of that number.
 */
export function laidOut(
  measure: (size: number, columns: number) => readonly number[],
  { high, sign, columns }: Room,
  { most, least }: Letters,
): Laid {
  const tried = (size: number, room: number, mostColumns: number): Laid | null => {
    let best: Laid | null = null;
    for (let of = 1; of <= mostColumns; ++of) {
      const heights = measure(size, of);
      if (heights.some((height) => height > room)) continue;
      const pages = pagesOf(heights, room, of);
      if (best === null || pages.length < best.pages.length) best = { size, columns: of, pages };
    }
    return best;
  };
  for (let size = most; size > least; size *= shrink) {
    const laid = tried(size, high, columns);
    if (laid !== null && laid.pages.length <= 1) return laid;
  }
  // One line that is higher than the whole room is made smaller rather than cut.
  for (let size = least; size > smallest; size *= shrink) {
    const laid = tried(size, high - sign, columnsOfPage);
    if (laid !== null) return laid;
  }
  return { size: smallest, columns: 1, pages: pagesOf(measure(smallest, 1), high - sign, 1) };
}

/** How long a page of lines stands before the next one (common practice, no source). */
const turnMs = 7000;

/** Which page stands at `now`, milliseconds of the program's time: the same one on every screen. */
export const pageAt = (now: number, pages: number): number => (pages < 2 ? 0 : Math.floor(now / turnMs) % pages);

/** What a screen of that size asks of letters that people read from afar, in pixels. */
export interface Letters {
  readonly most: number;
  readonly least: number;
}

// A 55-inch screen of 16 to 9 is 685 mm high and 1218 mm wide; capitals stand 0.668 of the font's size high. Sixteen
// minutes of arc, the least of ISO 9241-303 (from memory), are 70 mm at 15 m: below the figure that is one line. So
// capitals are 70 mm where lines are few, and not below 28 mm, as high as four lines at once (common practice, no
// source) let them be: sixteen minutes of arc at 6 m.
const capOfEm = 0.668;
const screenHigh = 685;
const screenWide = 1218;
const farCap = 70;
const nearCap = 28;
/** In the hand, pixels. */
const smallestInHand = 18;

export function lettersFor(width: number, height: number): Letters {
  const pixels = (cap: number) => Math.min((cap / screenHigh) * height, (cap / screenWide) * width) / capOfEm;
  return { most: Math.max(smallestInHand, pixels(farCap)), least: Math.max(smallestInHand, pixels(nearCap)) };
}

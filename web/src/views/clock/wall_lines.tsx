import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { laidOut, lettersFor, pageAt, type Laid } from "../../model/wall_lines.ts";

const gapOfEm = 0.8;

/** How high the lines of `probe` are in letters of that size, in one of so many columns of `wide` pixels in all. */
function measured(probe: HTMLElement, wide: number, size: number, columns: number): readonly number[] {
  probe.style.fontSize = `${String(size)}px`;
  probe.style.width = `${String((wide - (columns - 1) * gapOfEm * size) / columns)}px`;
  return [...probe.children].map((line) => line.getBoundingClientRect().height);
}

const shortLine = 34;
/** As high as the sign of pages in the style sheet. */
const signOfHeight = 0.042;

/** 'lines 1 to 3 of 8', for a page of lines. */
function pageWords(laid: Laid, page: number): string {
  const lines = (laid.pages[page] ?? []).flat();
  const all = laid.pages.flat(2).length;
  const [first, last] = [(lines[0] ?? 0) + 1, (lines.at(-1) ?? 0) + 1];
  return first === last ? `line ${String(first)} of ${String(all)}` : `lines ${String(first)} to ${String(last)} of ${String(all)}`;
}

/** All lines of a stretch for a wall: none is cut; what cannot stand at once stands in turn, and a sign says so. */
export function WallLines({ title, lines, now }: { readonly title: string; readonly lines: readonly string[]; readonly now: number }) {
  const box = useRef<HTMLDivElement>(null);
  const probe = useRef<HTMLOListElement>(null);
  const [laid, setLaid] = useState<Laid | null>(null);
  const text = lines.join("\n");
  useLayoutEffect(() => {
    const [room, ruler] = [box.current, probe.current];
    if (!room || !ruler) return undefined;
    const lay = () => {
      const { clientWidth: wide, clientHeight: high } = room;
      if (high === 0) return;
      const columns = text.split("\n").every((line) => line.length <= shortLine) ? 2 : 1;
      const sign = signOfHeight * innerHeight;
      const measure = (size: number, of: number) => measured(ruler, wide, size, of);
      setLaid(laidOut(measure, { high, sign, columns }, lettersFor(innerWidth, innerHeight)));
    };
    lay();
    const watch = new ResizeObserver(lay);
    watch.observe(room);
    void document.fonts.ready.then(lay);
    return () => {
      watch.disconnect();
    };
  }, [text]);
  const pages = laid?.pages ?? [];
  const page = pageAt(now, pages.length);
  return (
    <div class="clock-lines">
      <h2 class={title === "Now" ? "unseen" : ""}>{title}</h2>
      <div ref={box} class="wall-room">
        <ol ref={probe} class="plain wall-ruler" aria-hidden="true">
          {lines.map((line, index) => (
            <li key={index}>{line}</li>
          ))}
        </ol>
        {laid === null
          ? null
          : pages.map((columns, index) => (
              <div
                key={index}
                class={index === page ? "wall-page now" : "wall-page"}
                style={{ fontSize: `${String(laid.size)}px`, gap: `${String(gapOfEm)}em`, "--columns": String(laid.columns) }}
              >
                {columns.map((column, at) => (
                  <ol key={at} class="plain">
                    {column.map((line) => (
                      <li key={line}>{lines[line]}</li>
                    ))}
                  </ol>
                ))}
              </div>
            ))}
        {laid !== null && pages.length > 1 ? (
          <p class="page-sign">
            {pages.map((_, index) => (
              <i key={index} class={index === page ? "now" : ""} />
            ))}
            {pageWords(laid, page)}
          </p>
        ) : null}
      </div>
    </div>
  );
}

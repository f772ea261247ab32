import { clockText, type Figure } from "../../model/clock.ts";

// The figures of Atkinson Hyperlegible Next stand 0.668 of the font's size high; drawn a little narrower than they are,
// four of them fill a wide screen as high as 15 m ask for.
const high = 100;
const size = high / 0.668;
const narrow = 0.88;
const digit = 0.625 * size * narrow;
const colon = 0.3 * size * narrow;

/** Minutes and seconds as large as the room allows. The colon stands still; nothing flashes. */
export function BigFigure({ figure }: { readonly figure: Figure }) {
  const text = `${figure.over ? "+" : ""}${clockText(figure.seconds)}`;
  const width = Math.max(4, text.length) * digit - digit + colon;
  return (
    <svg class="figure" viewBox={`0 0 ${String(Math.ceil(width))} ${String(high + 2)}`} role="timer" aria-label={text}>
      <text
        x="0"
        y={high + 1}
        font-size={size}
        text-anchor="middle"
        transform={`translate(${String(width / 2)} 0) scale(${String(narrow)} 1)`}
      >
        {text}
      </text>
    </svg>
  );
}

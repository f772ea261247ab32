import type { ComponentChild } from "preact";
import type { Kind } from "./kinds.ts";

/** The strokes that lie over a kind's colour, so that it is told without colour. Six by six pixels. */
const strokes: Readonly<Partial<Record<Kind, ComponentChild>>> = {
  machine: <path d="M1.5 0v6M4.5 0v6" />,
  push: <path d="M-1 1l2-2M0 6l6-6M5 7l2-2" />,
  pull: <path d="M-1 5l2 2M0 0l6 6M5-1l2 2" />,
  legs: <path d="M1.5 1.5h.01M4.5 4.5h.01" stroke-width="2.4" stroke-linecap="round" />,
  trunk: <path d="M0 1.5h6M0 4.5h6" />,
  carry: <path d="M0 3h6M3 0v6" />,
  other: <path d="M3 3h.01" stroke-width="2" stroke-linecap="round" />,
  wait: <path d="M0 0h3v3H0zM3 3h3v3H3z" class="texture-solid" />,
};

export const textureOf = (kind: Kind): string => `url(#texture-${kind})`;

/** The fills of all kinds, once a page; every picture on it uses them. */
export function Textures({ kinds }: { readonly kinds: readonly Kind[] }) {
  return (
    <svg class="texture-sheet" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        {kinds.map((kind) => (
          <pattern key={kind} id={`texture-${kind}`} width="6" height="6" patternUnits="userSpaceOnUse">
            <rect width="6" height="6" class={`kind-${kind}`} />
            <g class="texture-stroke">{strokes[kind]}</g>
          </pattern>
        ))}
      </defs>
    </svg>
  );
}

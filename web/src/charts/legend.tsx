import { kindNames, kinds, type Kind } from "./kinds.ts";
import { textureOf } from "./textures.tsx";

/** What the fills mean, only those that occur. */
export function Legend({ present }: { readonly present: ReadonlySet<Kind> }) {
  return (
    <ul class="legend" aria-label="What the lanes show">
      {kinds
        .filter((kind) => present.has(kind))
        .map((kind) => (
          <li key={kind}>
            <svg width="26" height="14" aria-hidden="true" focusable="false">
              <rect
                width="26"
                height={kind === "rest" ? 5 : 14}
                y={kind === "rest" ? 4.5 : 0}
                fill={textureOf(kind)}
                class="bit"
              />
            </svg>
            {kindNames[kind]}
          </li>
        ))}
    </ul>
  );
}

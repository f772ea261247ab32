import type { ComponentChildren } from "preact";

export type Weight = "note" | "warning" | "problem" | "fine";

/** A shape for each weight, so that colour is never the only sign: circle, triangle, diamond, tick. */
const signs: Readonly<Record<Weight, { readonly path: string; readonly word: string }>> = {
  note: { path: "M8 1a7 7 0 1 1 0 14A7 7 0 0 1 8 1Zm-1 6v5h2V7Zm0-3v2h2V4Z", word: "Note" },
  warning: { path: "M8 1 16 15H0Zm-1 5v5h2V6Zm0 6v2h2v-2Z", word: "Warning" },
  problem: { path: "M8 0 16 8 8 16 0 8Zm-1 4v5h2V4Zm0 6v2h2v-2Z", word: "Problem" },
  fine: { path: "m2 8.5 2-2 2.5 2.5L13 2.5l2 2L6.5 13Z", word: "Fine" },
};

export function Sign({ weight }: { readonly weight: Weight }) {
  return (
    <svg class="sign" viewBox="0 0 16 16" role="img" aria-label={signs[weight].word}>
      <path d={signs[weight].path} fill-rule="evenodd" />
    </svg>
  );
}

/** A sentence of the program with its weight. `alert` says it aloud at once. */
export function Said(props: {
  readonly weight: Weight;
  readonly alert?: boolean;
  readonly children: ComponentChildren;
}) {
  return (
    <div class={`said ${props.weight}`} role={props.alert ? "alert" : undefined}>
      <Sign weight={props.weight} />
      <div>{props.children}</div>
    </div>
  );
}

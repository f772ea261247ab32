import type { ComponentChildren } from "preact";
import type { Kept } from "../state/kept.ts";
import "./working.css";

/** Whether something that is shown is being asked for anew, so that what stands there may be over. */
export const isOld = (at: Kept<unknown>): boolean => at.now.value.asking && at.now.value.value !== null;

/** Says that what stands below is being worked out anew, in words that follow at once. */
export function Working({ words }: { readonly words: string }) {
  return (
    <p class="working" role="status">
      <progress aria-label={words} /> {words}
    </p>
  );
}

/** What is shown, set back while it is worked out anew. */
export function MayBeOld({ old, children }: { readonly old: boolean; readonly children: ComponentChildren }) {
  return (
    <div class={old ? "may-be-old old" : "may-be-old"} aria-busy={old}>
      {children}
    </div>
  );
}

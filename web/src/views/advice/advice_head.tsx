import type { WhatIf } from "../../api/questions.ts";
import { isStale, type AdviceSearch } from "./advice_search.ts";
import "./advice.css";

interface AdviceHeadProps {
  readonly id: string;
  readonly name: string;
  /** What is being done while it is looked for, and the act that begins it. */
  readonly doing: string;
  readonly act: string;
  readonly search: AdviceSearch<unknown>;
  /** What would be asked now; null while the board cannot be rehearsed. */
  readonly now: WhatIf | null;
}

/** The name of some advice, with the act that asks for it, stops it, or asks again once the board has changed. */
export function AdviceHead({ id, name, doing, act, search, now }: AdviceHeadProps) {
  const found = search.found.value;
  return (
    <div class="help-head">
      <h2 id={id}>{name}</h2>
      {search.looking.value ? (
        <>
          <span class="row small" role="status">
            <progress aria-label={doing} /> {doing}…
          </span>
          <button
            type="button"
            onClick={() => {
              search.leave();
            }}
          >
            Stop looking
          </button>
        </>
      ) : (
        (found === null || isStale(found, now)) && (
          <button
            type="button"
            disabled={now === null}
            onClick={() => {
              if (now) search.look(now);
            }}
          >
            {found === null ? act : "Look again"}
          </button>
        )
      )}
    </div>
  );
}

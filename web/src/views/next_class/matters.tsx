import { gravestFirst } from "../../charts/words.ts";
import type { Rehearsal } from "../../model/rehearsal.ts";
import { Said } from "../../ui/said.tsx";

/** As many as can be acted on before a class. */
const most = 3;

/** The findings that matter most; the rest are on the board's own view. */
export function Matters({ rehearsal, board }: { readonly rehearsal: Rehearsal; readonly board: string | null }) {
  const ranked = gravestFirst(rehearsal.findings);
  const further = ranked.length - most;
  return (
    <section class="sheet" aria-labelledby="matters">
      <h2 id="matters">What matters</h2>
      <div class="stack">
        {ranked.length === 0 ? <Said weight="fine">Nothing to mind: the class goes as written.</Said> : null}
        {ranked.slice(0, most).map((finding) => (
          <Said key={finding.text} weight={finding.severity}>
            {finding.text}
          </Said>
        ))}
        {further > 0 && board ? (
          <p class="no-print">
            <a href={`/board/${board}`}>{`${further} more on the board's own view`}</a>
          </p>
        ) : null}
      </div>
    </section>
  );
}

import { gathered } from "../../charts/finding_words.ts";
import type { Rehearsal } from "../../model/rehearsal.ts";
import { MayHelp } from "../../ui/may_help.tsx";
import { Said } from "../../ui/said.tsx";

/** As many kinds of findings as can be acted on before a class, and as many sentences of each. */
const most = 3;
const mostAlike = 2;

/** The findings that matter most; the rest are on the board's own view. */
export function Matters({ rehearsal, board }: { readonly rehearsal: Rehearsal; readonly board: string | null }) {
  const groups = gathered(rehearsal.findings);
  const further = groups.length - most;
  return (
    <section class="sheet" aria-labelledby="matters">
      <h2 id="matters">What matters</h2>
      <div class="stack">
        {groups.length === 0 ? <Said weight="fine">Nothing to mind: the class goes as written.</Said> : null}
        {groups.slice(0, most).map(({ severity, findings, help }) => (
          <Said key={findings[0]?.text} weight={severity}>
            {findings.slice(0, mostAlike).map(({ text }) => (
              <p key={text}>{text}</p>
            ))}
            {findings.length > mostAlike ? <p class="small">And {findings.length - mostAlike} more like it.</p> : null}
            {help ? <p class="small may-help"><MayHelp words={help} /></p> : null}
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

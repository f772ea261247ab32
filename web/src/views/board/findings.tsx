import { gravestFirst } from "../../charts/words.ts";
import type { Finding } from "../../model/rehearsal.ts";

const severityWords: Readonly<Record<Finding["severity"], string>> = {
  problem: "Problem",
  warning: "Mind",
  note: "Note",
};

interface FindingsProps {
  readonly findings: readonly Finding[];
  readonly chosen: Finding | null;
  readonly show: (finding: Finding) => void;
}

/** The findings that matter most are in sight, the others one act away. */
const inSight = 3;

/** What the rehearsal wants the coach to know; each sentence leads to its words and its lanes. */
export function Findings({ findings, chosen, show }: FindingsProps) {
  if (findings.length === 0) return <p class="no-findings">Nothing to mind: the class goes as written.</p>;
  const ranked = gravestFirst(findings);
  const further = ranked.slice(inSight);
  return (
    <div class="findings">
      <FindingList label="Findings" findings={ranked.slice(0, inSight)} chosen={chosen} show={show} />
      {further.length > 0 && (
        <details>
          <summary>{further.length === 1 ? "One more" : `${further.length} more`}</summary>
          <FindingList label="Further findings" findings={further} chosen={chosen} show={show} />
        </details>
      )}
    </div>
  );
}

function FindingList({ findings, chosen, show, label }: FindingsProps & { readonly label: string }) {
  return (
    <ul aria-label={label}>
      {findings.map((finding) => (
        <li key={finding.text}>
          <button
            type="button"
            class={`finding finding-${finding.severity}`}
            aria-pressed={finding === chosen}
            onClick={() => {
              show(finding);
            }}
          >
            <strong>{severityWords[finding.severity]}</strong>
            <span>{finding.text}</span>
            {finding.line > 0 && <small>line {finding.line}</small>}
          </button>
        </li>
      ))}
    </ul>
  );
}

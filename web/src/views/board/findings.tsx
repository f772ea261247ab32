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

/** What the rehearsal wants the coach to know; each sentence leads to its words and its lanes. */
export function Findings({ findings, chosen, show }: FindingsProps) {
  if (findings.length === 0) return <p class="no-findings">Nothing to mind: the class goes as written.</p>;
  return (
    <ul class="findings" aria-label="Findings">
      {gravestFirst(findings).map((finding) => (
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

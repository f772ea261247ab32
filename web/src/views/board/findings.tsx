import { gathered, type Gathered } from "../../charts/finding_words.ts";
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

/** The kinds of findings that matter most are in sight, the others one act away; of each kind so many sentences. */
const inSight = 3;
const sentencesInSight = 2;

/** What the rehearsal wants the coach to know; each sentence leads to its words and its lanes. */
export function Findings({ findings, chosen, show }: FindingsProps) {
  if (findings.length === 0) return <p class="no-findings">Nothing to mind: the class goes as written.</p>;
  const groups = gathered(findings);
  const further = groups.slice(inSight);
  return (
    <div class="findings">
      <ul aria-label="Findings">
        {groups.slice(0, inSight).map((group) => (
          <Group key={group.findings[0]?.text} group={group} chosen={chosen} show={show} />
        ))}
      </ul>
      {further.length > 0 && (
        <details class="further">
          <summary>{further.length === 1 ? "One more" : `${further.length} more`}</summary>
          <ul aria-label="Further findings">
            {further.map((group) => (
              <Group key={group.findings[0]?.text} group={group} chosen={chosen} show={show} />
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

type ShowProps = Pick<FindingsProps, "chosen" | "show">;

function Group({ group, chosen, show }: ShowProps & { readonly group: Gathered }) {
  const alike = group.findings.slice(sentencesInSight);
  return (
    <li class="findings-alike">
      {group.findings.slice(0, sentencesInSight).map((finding) => (
        <OneFinding key={finding.text} finding={finding} chosen={chosen} show={show} />
      ))}
      {alike.length > 0 && (
        <details>
          <summary>{alike.length === 1 ? "One more like it" : `${alike.length} more like it`}</summary>
          <div class="findings-alike">
            {alike.map((finding) => (
              <OneFinding key={finding.text} finding={finding} chosen={chosen} show={show} />
            ))}
          </div>
        </details>
      )}
      {group.help !== null && <p class="may-help small">May help: {group.help}.</p>}
    </li>
  );
}

function OneFinding({ finding, chosen, show }: ShowProps & { readonly finding: Finding }) {
  return (
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
  );
}

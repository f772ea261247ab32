import { gathered, type Gathered } from "../../charts/finding_words.ts";
import type { Finding } from "../../model/rehearsal.ts";
import { MayHelp } from "../../ui/may_help.tsx";

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

/** The kinds of findings that matter most are in sight, the others and further ones of a kind one act away. */
const inSight = 3;

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
  const [first, ...alike] = group.findings;
  return (
    <li class="findings-alike">
      {first && <OneFinding finding={first} help={group.help} chosen={chosen} show={show} />}
      {alike.length > 0 && (
        <details>
          <summary>{alike.length === 1 ? "One more like it" : `${alike.length} more like it`}</summary>
          <div class="findings-alike">
            {alike.map((finding) => (
              <OneFinding key={finding.text} finding={finding} help={null} chosen={chosen} show={show} />
            ))}
          </div>
        </details>
      )}
    </li>
  );
}

function OneFinding({ finding, help, chosen, show }: ShowProps & { readonly finding: Finding; readonly help: string | null }) {
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
      <span>
        {finding.text} {help !== null && <small class="may-help"><MayHelp words={help} /></small>}
      </span>
      {finding.line > 0 && <small>line {finding.line}</small>}
    </button>
  );
}

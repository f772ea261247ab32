import { useEffect, useState } from "preact/hooks";
import { doubtsInWords } from "../../editor/colours.ts";
import type { Diagnostic } from "../../model/reading.ts";

interface DoubtListProps {
  readonly doubts: readonly Diagnostic[];
  readonly goTo: (doubt: Diagnostic) => void;
  readonly mend: (doubt: Diagnostic, repair: string) => void;
}

const severityWords: Readonly<Record<Diagnostic["severity"], string>> = {
  error: "Error",
  warning: "Doubt",
  note: "Note",
};

/** Everything doubtful in the text with its repairs, one after another by keyboard. */
export function DoubtList({ doubts, goTo, mend }: DoubtListProps) {
  const grave = doubts.some((each) => each.severity !== "note");
  // Opens by itself for what is grave; after that it is the reader's: mending the last error must not shut it.
  const [open, setOpen] = useState(grave);
  useEffect(() => {
    if (grave) setOpen(true);
  }, [grave]);
  return (
    <details
      class="doubt-list"
      open={open}
      onToggle={(event) => {
        setOpen(event.currentTarget.open);
      }}
    >
      <summary>
        <span role="status">{doubtsInWords(doubts)}</span>
      </summary>
      <ol>
        {doubts.map((doubt) => (
          <li key={`${doubt.line} ${doubt.column} ${doubt.name} ${doubt.text}`} class={`listed-doubt listed-${doubt.severity}`}>
            <button
              type="button"
              class="line-link"
              onClick={() => {
                goTo(doubt);
              }}
            >
              <strong>{severityWords[doubt.severity]}</strong> line {doubt.line}: {doubt.text}
            </button>
            {doubt.hint && <span class="hint"> {doubt.hint}</span>}
            {doubt.repairs.length > 0 && (
              <span class="repairs">
                {doubt.repairs.map((repair) => (
                  <button
                    key={repair}
                    type="button"
                    class="repair"
                    onClick={() => {
                      mend(doubt, repair);
                    }}
                  >
                    {repair}
                  </button>
                ))}
              </span>
            )}
          </li>
        ))}
      </ol>
    </details>
  );
}

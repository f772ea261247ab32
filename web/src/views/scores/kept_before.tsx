import { useEffect, useState } from "preact/hooks";
import { beforeIt, type ScoreLine } from "../../model/scores.ts";
import { program } from "../../state/program.ts";
import { instantWords } from "../../ui/words.ts";

/** '51 by Mira, today at 09:03'. */
function lineWords(line: ScoreLine, now: Date): string {
  const when = line.saved_at === null ? "" : `, ${instantWords(line.saved_at, now)}`;
  return `${line.score} by ${line.saved_by ?? line.entered_by}${when}`;
}

/** What is kept, by whom and when, and all that stood there before. */
export function KeptBefore({ line }: { readonly line: ScoreLine }) {
  const [before, setBefore] = useState<readonly ScoreLine[]>([]);
  useEffect(() => {
    if (line.version < 2) return;
    void program.scoreVersions(line.number).then((answer) => {
      if (answer.ok) setBefore(beforeIt(answer.value, line));
    });
  }, [line.number, line.version]);
  const now = new Date();
  return (
    <div class="soft">
      <p>Kept: {lineWords(line, now)}.</p>
      {before.length > 0 ? (
        <ul class="plain tight" aria-label="Before that">
          {before.map((each) => (
            <li key={each.version}>Before that: {lineWords(each, now)}.</li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}

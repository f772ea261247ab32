import type { Coming, Moment } from "../../model/clock.ts";
import { kindWord, linesNow, partName, whenWords } from "./clock_words.ts";

/** What to do in the stretch that runs, as chalked; where there is nothing to do, what to do after it. */
export function LinesNow({ moment, coming }: { readonly moment: Moment; readonly coming: Coming | null }) {
  const { title, lines } = linesNow(moment, coming);
  return (
    <div class="clock-lines">
      {lines.length > 0 ? <h2>{title}</h2> : null}
      <ol class="plain">
        {lines.map((line, index) => (
          <li key={index}>{line}</li>
        ))}
      </ol>
    </div>
  );
}

/** What comes after it. */
export function NextUp({ coming, moment }: { readonly coming: Coming | null; readonly moment: Moment }) {
  if (moment.state === "over") return null;
  if (!coming)
    return (
      <div class="clock-next">
        <h2>Next</h2>
        <p class="next-name">The end</p>
      </div>
    );
  const { cue } = coming;
  const line = cue.kind === "work" && moment.cue?.kind === "work" ? cue.lines[0] : undefined;
  return (
    <div class="clock-next">
      <h2>Next</h2>
      <p class="next-name">
        {cue.kind === "part" || cue.name === kindWord(cue) ? partName(cue) : `${kindWord(cue)}: ${cue.name}`}
      </p>
      <p class="soft">{whenWords(coming, moment)}</p>
      {line ? <p class="next-line">{line}</p> : null}
    </div>
  );
}

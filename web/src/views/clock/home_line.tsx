import { useEffect } from "preact/hooks";
import { callWords, homeFigures, homeIn } from "../../model/home.ts";
import { homeOf } from "../../state/gym.ts";
import type { Shown } from "./use_clock.ts";

/** When people are expected home in the piece that runs, from its rehearsal; in the coach's hand also when to call. */
export function HomeLine({ shown, call }: { readonly shown: Shown; readonly call: boolean }) {
  const id = shown.clock?.class ?? "";
  const known = homeOf(id);
  useEffect(() => {
    if (id) known.want();
  }, [id, known]);
  const { moment } = shown;
  const heat = homeIn(known.now.value.value?.heats ?? [], moment?.cue ?? null);
  if (!heat || !moment) return null;
  const words = call ? callWords(heat, moment.elapsed) : null;
  return (
    <div class="home-line">
      <dl>
        {homeFigures(heat).map(([name, time]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{time}</dd>
          </div>
        ))}
      </dl>
      {words ? <p class="home-call">{words}</p> : null}
    </div>
  );
}

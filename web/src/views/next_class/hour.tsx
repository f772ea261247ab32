import { axisOf } from "../../charts/axis.ts";
import { ClassBar, type Stretch } from "../../charts/class_bar.tsx";
import { useWidth } from "../../charts/use_width.ts";
import { slackText } from "../../charts/words.ts";
import type { ClassTime } from "../../model/rehearsal.ts";
import { timeAfter } from "../../ui/words.ts";

function minutes(seconds: number): string {
  const whole = Math.round(seconds / 60);
  return whole === 0 && seconds > 0 ? "under 1 min" : `${whole} min`;
}

interface HourProps {
  readonly timetable: ClassTime;
  readonly start: string | null;
  /** The drills of the warm-up, where one was chosen. */
  readonly drills: readonly Stretch[];
}

/** The hour of the class: its boxes as a bar and as a list with times of day, and what is to spare. */
export function Hour({ timetable, start, drills }: HourProps) {
  const [bar, width] = useWidth<HTMLDivElement>();
  const end = Math.max(timetable.p90_s, timetable.planned_s ?? 0);
  return (
    <section class="sheet hour" aria-labelledby="hour">
      <h2 id="hour">The hour</h2>
      <p>
        <strong>{slackText(timetable)}</strong>
      </p>
      <div ref={bar} class="no-print">
        {width > 0 ? <ClassBar timetable={timetable} axis={axisOf({ from: 0, to: end }, width)} drills={drills} /> : null}
      </div>
      <ol class="plain boxes">
        {timetable.boxes.map((box, index) => (
          <li key={index} class={box.kind === "work" ? "work" : undefined}>
            <span class="at">{start ? timeAfter(start, box.start_p50_s) : minutes(box.start_p50_s)}</span>
            <span>{box.name}</span>
            <span class="soft">{minutes(box.end_p50_s - box.start_p50_s)}</span>
          </li>
        ))}
        {start ? (
          <li>
            <span class="at">{timeAfter(start, timetable.p50_s)}</span>
            <span class="soft">
              done
              {timetable.p90_s - timetable.p50_s >= 60 ? `; on a slow day ${timeAfter(start, timetable.p90_s)}` : ""}
            </span>
          </li>
        ) : null}
      </ol>
    </section>
  );
}

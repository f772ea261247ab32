import { useEffect, useState } from "preact/hooks";
import { clockText, comingAfter, figureOf, sidesOf, type Moment, type Side } from "../../model/clock.ts";
import { HomeLine } from "./home_line.tsx";
import { NextUp } from "./now_and_next.tsx";
import { BigFigure } from "./big_figure.tsx";
import { counters, lineUpLines, linesNow, nameBeside, stateWord } from "./clock_words.ts";
import { ClockFoot } from "./clock_foot.tsx";
import { StateSign } from "./state_sign.tsx";
import { gym, lineUpOf } from "../../state/gym.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { WallLines } from "./wall_lines.tsx";
import { useClock } from "./use_clock.ts";
import "./clock.css";

/** What looks differ by: a word and a sign say the same. */
export function lookOf(moment: Moment): string {
  if (moment.state !== "running" || moment.cue === null) return moment.state;
  return moment.cue.kind;
}

/** So many fit below the figure; of more, those around the next start. */
const mostSides = 4;

function Sides({ sides }: { readonly sides: readonly Side[] }) {
  const next = sides.findIndex((side) => side.state === "waits");
  const first = Math.max(0, Math.min(next < 0 ? sides.length : next - 1, sides.length - mostSides));
  const shown = sides.filter((side) => side.state !== "done").slice(first, first + mostSides);
  return (
    <ul class="plain clock-sides">
      {shown.map((side) => (
        <li key={side.name} class={side.state}>
          <span>{side.name}</span>
          <span class="side-time">
            {side.time === null
              ? "waits"
              : side.state === "waits"
                ? `goes in ${clockText(Math.ceil(side.time / 1000))}`
                : clockText(Math.floor(side.time / 1000))}
          </span>
        </li>
      ))}
    </ul>
  );
}

/** Two groups that run at once: a figure each, half as high. */
function TwoFigures({ sides }: { readonly sides: readonly Side[] }) {
  return (
    <div class="two-figures">
      {sides.map((side) => (
        <div key={side.name}>
          <p>
            {side.name}
            {side.state === "waits" ? " goes in" : ""}
          </p>
          <BigFigure
            figure={{
              seconds: side.state === "waits" ? Math.ceil((side.time ?? 0) / 1000) : Math.floor((side.time ?? 0) / 1000),
              over: false,
            }}
          />
        </div>
      ))}
      <p class="half">Two clocks: for half the distance</p>
    </div>
  );
}

function Bar({ moment }: { readonly moment: Moment }) {
  const length = moment.left === null ? moment.length : moment.elapsed + moment.left;
  const share = length ? Math.min(1, moment.elapsed / length) : 0;
  return (
    <div class="clock-bar" aria-hidden="true">
      <div style={{ width: `${String(Math.round(share * 1000) / 10)}%` }} />
    </div>
  );
}

/** The clock of the next class: for a screen that always has the same address. */
export function NextClassClock() {
  return (
    <LookedAt
      at={gym}
      show={({ next_class }) =>
        next_class === null ? <p>The gym has no class on a day to come.</p> : <ClockWall key={next_class} id={next_class} acts />
      }
    />
  );
}

/** The clock for a screen on the wall; who takes the class has its buttons below. */
export function ClockWall({ id, acts }: { readonly id: string; readonly acts: boolean }) {
  const shown = useClock(id);
  const [calm, setCalm] = useState(false);
  useEffect(() => {
    lineUpOf(id).want();
    document.documentElement.classList.add("clock-open");
    return () => {
      document.documentElement.classList.remove("clock-open");
    };
  }, [id]);
  if (!shown?.clock || !shown.moment) {
    const fault = shown?.watch.fault.value;
    return <p class="clock-wait">{fault ? fault.text : "Looking…"}</p>;
  }
  const { clock, moment, now } = shown;
  if (clock.cues.length === 0) return <p class="clock-wait">This class has no board yet, so its clock has nothing to show.</p>;
  const coming = comingAfter(clock, moment, now);
  const sides = sidesOf(clock, moment, now);
  const two = sides.length === 2 && (moment.cue?.group_starts_ms.length ?? 0) === 2;
  const { title, lines: work } = linesNow(moment, coming);
  const lines = [...work, ...lineUpLines(lineUpOf(id).now.value.value?.pieces ?? [], moment, coming)];
  const called = clock.last_call_ms !== null && moment.cue?.kind === "work" && moment.index === clock.at?.cue;
  return (
    <div class={`clock-wall ${lookOf(moment)} ${calm ? "calm" : ""}`} data-instant={now}>
      <div class="clock-top">
        <h1>
          <StateSign moment={moment} />
          {stateWord(moment)}
        </h1>
        {called ? <p class="clock-call">Last call</p> : null}
        <p class="clock-name">{nameBeside(moment, clock.cues)}</p>
        {moment.cue ? counters(moment.cue).map((words) => <p key={words}>{words}</p>) : null}
      </div>
      {two ? <TwoFigures sides={sides} /> : <BigFigure figure={figureOf(moment)} />}
      <Bar moment={moment} />
      <div class="clock-below">
        {lines.length > 0 ? <WallLines title={title} lines={lines} now={now} /> : null}
        <div class="clock-aside">
          <NextUp coming={coming} moment={moment} />
          {sides.length === 0 ? <HomeLine shown={shown} call={false} /> : null}
          {sides.length > 0 && !two ? <Sides sides={sides} /> : null}
        </div>
      </div>
      <ClockFoot
        shown={shown}
        acts={acts}
        calm={() => {
          setCalm(!calm);
        }}
      />
    </div>
  );
}

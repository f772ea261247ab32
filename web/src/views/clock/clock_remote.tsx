import { useState } from "preact/hooks";
import { clockText, comingAfter, figureOf, partsOf, sidesOf, type Cue, type Placed } from "../../model/clock.ts";
import { EmergencyButton } from "../floor/emergency.tsx";
import { FloorLinks } from "../floor/floor_head.tsx";
import { Act, MainAct, NextAct, TakeBack, TimeActs } from "./clock_acts.tsx";
import { BigFigure } from "./big_figure.tsx";
import { counters, cueWords, nameBeside, partName, stateWord } from "./clock_words.ts";
import { lookOf } from "./clock_wall.tsx";
import { HomeLine } from "./home_line.tsx";
import { LineUp } from "../line_up/line_up.tsx";
import { LinesNow, NextUp } from "./now_and_next.tsx";
import { Sound, Standing } from "./clock_foot.tsx";
import { StateSign } from "./state_sign.tsx";
import { TwoTaps } from "../../ui/two_taps.tsx";
import { useClock, type Shown } from "./use_clock.ts";
import "../floor/floor.css";
import "./clock.css";

/** More stretches of one part than these stand folded below the first. */
const mostUnfolded = 3;

function Stretch({ shown, cue, index }: { readonly shown: Shown; readonly cue: Cue; readonly index: number }) {
  const state = shown.moment?.state;
  const now = index === shown.moment?.index;
  const words = cueWords(cue, shown.clock?.cues[index - 1]);
  return (
    <li aria-current={now ? "step" : undefined}>
      <span>
        {words} <span class="soft">{cue.length_ms === null ? "open" : clockText(cue.length_ms / 1000)}</span>
      </span>
      <Act
        shown={shown}
        deed={state === "running" || state === "paused" ? "jump" : "start"}
        detail={{ cue: cue.id }}
        label={`${now ? "Again from here" : "From here"}: ${words}`}
      >
        {now ? "Again from here" : "From here"}
      </Act>
    </li>
  );
}

/** The stretches of one part of the class; of many the first, and the others folded. */
function PartStretches({ shown, part }: { readonly shown: Shown; readonly part: readonly Placed[] }) {
  const unfolded = part.length > mostUnfolded ? part.slice(0, 1) : part;
  const folded = part.slice(unfolded.length);
  const row = ({ cue, index }: Placed) => <Stretch key={cue.id} shown={shown} cue={cue} index={index} />;
  return (
    <>
      {unfolded.map(row)}
      {folded.length > 0 ? (
        <li class="folded">
          <details open={folded.some(({ index }) => index === shown.moment?.index)}>
            <summary>
              {folded[0] ? partName(folded[0].cue) : ""}: {folded.length} more stretches
            </summary>
            <ol class="plain">{folded.map(row)}</ol>
          </details>
        </li>
      ) : null}
    </>
  );
}

function Stretches({ shown }: { readonly shown: Shown }) {
  const { clock, moment } = shown;
  const [open, setOpen] = useState(false);
  if (!clock || !moment) return null;
  const goes = moment.state === "running" || moment.state === "paused";
  return (
    <section class="clock-stretches">
      <button
        type="button"
        aria-expanded={open}
        onClick={() => {
          setOpen(!open);
        }}
      >
        {goes ? "Go to another stretch" : "Start somewhere else"}
      </button>
      {open ? (
        <ol class="plain">
          {partsOf(clock.cues).map((part) => (
            <PartStretches key={part[0]?.cue.id} shown={shown} part={part} />
          ))}
        </ol>
      ) : null}
    </section>
  );
}

function EndIt({ shown }: { readonly shown: Shown }) {
  const state = shown.moment?.state;
  if (state !== "running" && state !== "paused") return null;
  return (
    <TwoTaps
      first="End the clock…"
      sure="Yes, end the clock"
      not="No, keep it"
      kind="act"
      disabled={shown.watch.underWay.value !== null}
      act={() => {
        shown.voice.wake();
        shown.watch.act("stop");
      }}
    />
  );
}

/** The clock in the hand of who takes the class. */
export function ClockRemote({ id }: { readonly id: string }) {
  const shown = useClock(id);
  if (!shown?.clock || !shown.moment) {
    const fault = shown?.watch.fault.value;
    return <p class="soft">{fault ? fault.text : "Looking…"}</p>;
  }
  const { clock, moment, now } = shown;
  if (clock.cues.length === 0) return <p>This class has no board yet, so its clock has nothing to show.</p>;
  const coming = comingAfter(clock, moment, now);
  const [nextSide, ...later] = sidesOf(clock, moment, now).filter((side) => side.state === "waits" && side.time !== null);
  return (
    <div class={`clock-remote ${lookOf(moment)}`} data-instant={now}>
      <FloorLinks classId={id} />
      <div class="remote-face">
        <div class="floor-title">
          <h1>
            <StateSign moment={moment} />
            {stateWord(moment)}
          </h1>
          <EmergencyButton />
        </div>
        <p class="soft">
          {[nameBeside(moment, clock.cues), ...(moment.cue ? counters(moment.cue) : [])].filter(Boolean).join(", ")}
        </p>
        <BigFigure figure={figureOf(moment)} />
        <HomeLine shown={shown} call />
        {nextSide ? (
          <p>
            {nextSide.name} goes in {clockText(Math.ceil((nextSide.time ?? 0) / 1000))}
            {later.length > 0 ? <span class="soft">, {later.length} more after it</span> : null}
          </p>
        ) : null}
      </div>
      <div class="remote-acts">
        <MainAct shown={shown} />
        <NextAct shown={shown} />
        <TimeActs shown={shown} />
        <TakeBack shown={shown} />
        <EndIt shown={shown} />
      </div>
      <Standing shown={shown} />
      <div class="clock-below">
        <LinesNow moment={moment} coming={coming} />
        <NextUp coming={coming} moment={moment} />
      </div>
      <LineUp classId={clock.class} open={moment.state === "ready"} />
      <Stretches shown={shown} />
      <div class="row">
        <Sound shown={shown} />
        <a class="button" href={`/clock/${clock.class}`}>
          Show it large
        </a>
      </div>
    </div>
  );
}

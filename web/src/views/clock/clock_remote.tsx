import { useState } from "preact/hooks";
import { clockText, comingAfter, figureOf, sidesOf } from "../../model/clock.ts";
import { FloorStops } from "../floor/floor_head.tsx";
import { Act, MainAct, NextAct, TakeBack, TimeActs } from "./clock_acts.tsx";
import { BigFigure } from "./big_figure.tsx";
import { counters, cueWords, nameBeside, stateWord } from "./clock_words.ts";
import { lookOf } from "./clock_wall.tsx";
import { HomeLine } from "./home_line.tsx";
import { LinesNow, NextUp } from "./now_and_next.tsx";
import { Sound, Standing } from "./clock_foot.tsx";
import { StateSign } from "./state_sign.tsx";
import { TwoTaps } from "../../ui/two_taps.tsx";
import { useClock, type Shown } from "./use_clock.ts";
import "../floor/floor.css";
import "./clock.css";

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
          {clock.cues.map((cue, index) => (
            <li key={cue.id} aria-current={index === moment.index ? "step" : undefined}>
              <span>
                {cueWords(cue)}{" "}
                <span class="soft">{cue.length_ms === null ? "open" : clockText(cue.length_ms / 1000)}</span>
              </span>
              <Act
                shown={shown}
                deed={goes ? "jump" : "start"}
                detail={{ cue: cue.id }}
                label={`${index === moment.index ? "Again from here" : "From here"}: ${cueWords(cue)}`}
              >
                {index === moment.index ? "Again from here" : "From here"}
              </Act>
            </li>
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
  const sides = sidesOf(clock, moment, now).filter((side) => side.state === "waits" && side.time !== null);
  return (
    <div class={`clock-remote ${lookOf(moment)}`} data-instant={now}>
      <FloorStops classId={id} />
      <div class="remote-face">
        <h1>
          <StateSign moment={moment} />
          {stateWord(moment)}
        </h1>
        <p class="soft">
          {[nameBeside(moment, clock.cues), ...(moment.cue ? counters(moment.cue) : [])].filter(Boolean).join(", ")}
        </p>
        <BigFigure figure={figureOf(moment)} />
        <HomeLine shown={shown} call />
        {sides.map((side) => (
          <p key={side.name}>
            {side.name} goes in {clockText(Math.ceil((side.time ?? 0) / 1000))}
          </p>
        ))}
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

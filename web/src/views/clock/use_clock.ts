import { useEffect, useState } from "preact/hooks";
import { momentAt, type Clock, type Moment } from "../../model/clock.ts";
import { ClockWatch } from "../../state/clock.ts";
import { ClockVoice } from "./clock_voice.ts";

/** What a view of a clock draws: everything as of one instant. */
export interface Shown {
  readonly watch: ClockWatch;
  readonly voice: ClockVoice;
  readonly clock: Clock | null;
  readonly moment: Moment | null;
  /** The program's time of this picture, milliseconds. */
  readonly now: number;
}

const between = 1000 / 60;

/** Follows the clock of a class; draws again with each frame in which a figure may change, or (still) each second. */
export function useClock(id: string, pace: "lively" | "still" = "lively"): Shown | null {
  const [watch, setWatch] = useState<{ readonly watch: ClockWatch; readonly voice: ClockVoice } | null>(null);
  const [now, setNow] = useState(0);
  useEffect(() => {
    const made = { watch: new ClockWatch(id), voice: new ClockVoice() };
    setWatch(made);
    let frame = 0;
    let drawn = 0;
    const draw = () => {
      frame = requestAnimationFrame(draw);
      const at = made.watch.now();
      const clock = made.watch.clock.value;
      if (clock && pace === "lively") made.voice.say(clock, at);
      // Twenty pictures a second, and one as soon as a second begins.
      const step = Math.floor((at + between / 2) / (pace === "lively" ? 50 : 1000));
      if (step === drawn) return;
      drawn = step;
      setNow(at);
    };
    draw();
    return () => {
      cancelAnimationFrame(frame);
      made.watch.stop();
      made.voice.stop();
    };
  }, [id, pace]);
  if (!watch) return null;
  const clock = watch.watch.clock.value;
  return { ...watch, clock, moment: clock ? momentAt(clock, now) : null, now };
}

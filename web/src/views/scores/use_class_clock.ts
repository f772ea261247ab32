import { useEffect, useState } from "preact/hooks";
import { momentAt, type Clock, type Moment } from "../../model/clock.ts";
import { millisecondsInto } from "../../model/finish.ts";
import { ClockWatch } from "../../state/clock.ts";
import { useNow } from "../../ui/use_now.ts";

/** Where the clock of the class stands, again every second; null until the program has said it. */
export function useClassMoment(classId: string): { readonly clock: Clock; readonly moment: Moment } | null {
  const [watch, setWatch] = useState<ClockWatch | null>(null);
  useNow();
  useEffect(() => {
    const made = new ClockWatch(classId);
    setWatch(made);
    return () => {
      made.stop();
    };
  }, [classId]);
  const clock = watch?.clock.value ?? null;
  return watch === null || clock === null ? null : { clock, moment: momentAt(clock, watch.now()) };
}

/** When the piece began by this device's clock, as the clock of the class says; null while that does not run in it. */
export function startOf(moment: Moment, piece: string): number | null {
  const into = millisecondsInto(moment, piece);
  return into === null ? null : Date.now() - into;
}

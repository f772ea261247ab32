import { useEffect, useState } from "preact/hooks";
import { momentAt } from "../../model/clock.ts";
import { millisecondsInto } from "../../model/finish.ts";
import { ClockWatch } from "../../state/clock.ts";

/** When the piece began by this device's clock, as the clock of the class says; null while that does not run in it. */
export function useClassClock(classId: string, piece: string): number | null {
  const [watch, setWatch] = useState<ClockWatch | null>(null);
  useEffect(() => {
    const made = new ClockWatch(classId);
    setWatch(made);
    return () => {
      made.stop();
    };
  }, [classId]);
  const clock = watch?.clock.value ?? null;
  if (watch === null || clock === null) return null;
  const into = millisecondsInto(momentAt(clock, watch.now()), piece);
  return into === null ? null : Date.now() - into;
}

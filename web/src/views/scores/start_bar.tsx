import { useState } from "preact/hooks";
import { clock, secondsOf } from "../../model/scores.ts";
import { Field } from "../../ui/field.tsx";

/** When the piece began by this device's clock, kept on it; null: not yet. */
export function useStart(name: string): readonly [number | null, (start: number | null) => void] {
  const key = `repwright.start.${name}`;
  const kept = Number(localStorage.getItem(key) ?? NaN);
  const [start, setStart] = useState<number | null>(Number.isFinite(kept) && Date.now() - kept < 3 * 3600_000 ? kept : null);
  const change = (at: number | null) => {
    setStart(at);
    if (at === null) localStorage.removeItem(key);
    else localStorage.setItem(key, String(at));
  };
  return [start, change];
}

/** The clock of a timed piece: that of the class, or started here with one tap, or told how long it has been running. */
export function StartBar(props: {
  readonly start: number | null;
  /** Whether the start comes from the clock of the class. */
  readonly byClass: boolean;
  readonly now: number;
  readonly change: (start: number | null) => void;
}) {
  const { start, byClass, now, change } = props;
  const [running, setRunning] = useState("");
  const seconds = secondsOf(running);
  if (start !== null)
    return (
      <div class="start-bar">
        <span class="big-clock" aria-label="The clock of this piece">
          {clock(Math.floor((now - start) / 1000))}
        </span>
        <span class="soft">{byClass ? "By the clock of the class. " : ""}Tap a name at the finish.</span>
        {byClass ? null : (
          <button
            type="button"
            onClick={() => {
              change(null);
            }}
          >
            Stop
          </button>
        )}
      </div>
    );
  return (
    <div class="start-bar">
      <button
        type="button"
        class="first"
        onClick={() => {
          change(Date.now());
        }}
      >
        Start now
      </button>
      <form
        class="one-line"
        onSubmit={(event) => {
          event.preventDefault();
          if (seconds !== null) change(Date.now() - seconds * 1000);
        }}
      >
        <Field label="or it has been running for" value={running} change={setRunning} hint="2:30" />
        <button disabled={seconds === null}>Go</button>
      </form>
    </div>
  );
}

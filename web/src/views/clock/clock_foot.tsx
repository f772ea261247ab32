import { useEffect, useState } from "preact/hooks";
import type { Shown } from "./use_clock.ts";
import { MainAct } from "./clock_acts.tsx";

/** Keeps the screen on while a clock is open, where the browser lets a page do that. */
function useAwake(): boolean {
  const can = "wakeLock" in navigator;
  useEffect(() => {
    if (!can) return undefined;
    let lock: WakeLockSentinel | null = null;
    const take = () => {
      if (document.visibilityState !== "visible") return;
      void navigator.wakeLock.request("screen").then(
        (taken) => {
          lock = taken;
        },
        () => undefined, // the device saves its battery
      );
    };
    take();
    document.addEventListener("visibilitychange", take);
    return () => {
      document.removeEventListener("visibilitychange", take);
      void lock?.release();
    };
  }, [can]);
  return can;
}

/** Volume, and off; a browser wants to be touched before it sounds. */
export function Sound({ shown }: { readonly shown: Shown }) {
  const { voice } = shown;
  const volume = voice.volume.value;
  if (!voice.awake.value)
    return (
      <button
        type="button"
        onClick={() => {
          voice.wake();
        }}
      >
        Turn the sound on
      </button>
    );
  return (
    <label class="beside clock-volume">
      {volume === 0 ? "Sound off" : "Sound"}
      <input
        type="range"
        min="0"
        max="10"
        value={String(Math.round(volume * 10))}
        aria-valuetext={volume === 0 ? "off" : `${String(Math.round(volume * 10))} of 10`}
        onInput={(event) => {
          voice.setVolume(Number(event.currentTarget.value) / 10);
        }}
        onChange={() => {
          voice.sound("count");
        }}
      />
    </label>
  );
}

/** What is not as it should be, quietly. */
export function Standing({ shown }: { readonly shown: Shown }) {
  const awake = useAwake();
  const { watch } = shown;
  return (
    <div class="clock-standing" role="status">
      {watch.away.value ? <p>The program does not answer. The clock goes on alone and joins it again by itself.</p> : null}
      {watch.underWay.value && watch.away.value ? <p>Your last act waits for the program.</p> : null}
      {watch.fault.value ? <p>{watch.fault.value.text}</p> : null}
      {awake ? null : (
        <p>
          This way of opening the page cannot keep the screen on, or start without the network: set the device never to
          sleep, and leave this page open.
        </p>
      )}
    </div>
  );
}

interface Foot {
  readonly shown: Shown;
  readonly acts: boolean;
  readonly calm: () => void;
}

/** Below the wall's clock: small, and out of the way when nobody needs it. */
export function ClockFoot({ shown, acts, calm }: Foot) {
  const [full, setFull] = useState(false);
  const toFull = () => {
    if (document.fullscreenElement) void document.exitFullscreen();
    else void document.documentElement.requestFullscreen().catch(() => undefined);
    setFull(!document.fullscreenElement);
    shown.voice.wake();
  };
  return (
    <div class="clock-foot">
      {acts ? <MainAct shown={shown} /> : null}
      {acts && shown.clock ? (
        <a class="button" href={`/clock/${shown.clock.class}/remote`}>
          All buttons
        </a>
      ) : null}
      <Sound shown={shown} />
      <button type="button" onClick={toFull}>
        {full ? "Smaller" : "Fill the screen"}
      </button>
      <button type="button" class="bare" onClick={calm}>
        Hide or show this row
      </button>
      <Standing shown={shown} />
    </div>
  );
}

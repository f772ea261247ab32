import { soundsBetween, type Clock, type ClockSound } from "../../model/clock.ts";
import { signal } from "@preact/signals";

const aheadMs = 200;
const volumeKey = "repwright.clock.volume";

/** One tone: hertz, how long, how long after the sound began (seconds). */
interface Tone {
  readonly hertz: number;
  readonly long: number;
  readonly after: number;
}

const tone = (hertz: number, long: number, after = 0): Tone => ({ hertz, long, after });

// Three short tones a second apart and a longer one on zero, 500 to 2500 Hz with a part below 1500 Hz for hearing loss
// with age: common practice, no source.
const tones: Readonly<Record<ClockSound["sound"], readonly Tone[]>> = {
  count: [tone(740, 0.12)],
  go: [tone(1110, 0.8), tone(740, 0.8)],
  rest: [tone(880, 0.3), tone(587, 0.5, 0.3)],
  end: [tone(740, 0.25), tone(740, 0.25, 0.35), tone(587, 0.9, 0.7)],
  ready: [tone(587, 0.2), tone(740, 0.2, 0.22)],
  "last-minute": [tone(988, 0.15), tone(988, 0.15, 0.25)],
  "last-call": [tone(988, 0.2), tone(1318, 0.2, 0.22), tone(988, 0.3, 0.44)],
};

function keptVolume(): number {
  const kept = Number(localStorage.getItem(volumeKey) ?? "0.7");
  return kept >= 0 && kept <= 1 ? kept : 0.7;
}

/** The sounds of a clock. A browser lets a page sound only after somebody touched it. */
export class ClockVoice {
  /** From 0, off, to 1. */
  readonly volume = signal(keptVolume());
  /** Whether the browser lets it sound. */
  readonly awake = signal(false);
  private context: AudioContext | null = null;
  private said = 0; // until when all sounds were given to the browser, program's time

  /** To be called from a touch or a key. */
  wake(): void {
    this.context ??= new AudioContext();
    void this.context.resume().then(() => {
      this.awake.value = this.context?.state === "running";
    });
  }

  setVolume(volume: number): void {
    this.volume.value = volume;
    localStorage.setItem(volumeKey, String(volume));
  }

  /** Gives the browser what is to be heard soon. */
  say(clock: Clock, now: number): void {
    const until = now + aheadMs;
    const since = Math.max(this.said, now - aheadMs);
    this.said = until;
    if (!this.awake.value || this.volume.value === 0) return;
    for (const { at, sound } of soundsBetween(clock, since, until)) this.sound(sound, (at - now) / 1000);
  }

  sound(which: ClockSound["sound"], after = 0): void {
    const context = this.context;
    if (!context) return;
    for (const each of tones[which]) {
      const begin = context.currentTime + Math.max(0, after + each.after);
      const loudness = context.createGain();
      loudness.gain.setValueAtTime(0, begin);
      loudness.gain.linearRampToValueAtTime(this.volume.value * 0.5, begin + 0.01);
      loudness.gain.setValueAtTime(this.volume.value * 0.5, begin + each.long - 0.03);
      loudness.gain.linearRampToValueAtTime(0, begin + each.long);
      loudness.connect(context.destination);
      const source = context.createOscillator();
      source.type = "triangle";
      source.frequency.value = each.hertz;
      source.connect(loudness);
      source.start(begin);
      source.stop(begin + each.long + 0.02);
    }
  }

  stop(): void {
    void this.context?.close();
    this.context = null;
  }
}

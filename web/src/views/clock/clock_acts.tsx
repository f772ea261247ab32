import { useEffect } from "preact/hooks";
import { classOf, gym } from "../../state/gym.ts";
import { TwoTaps } from "../../ui/two_taps.tsx";
import { dayWords } from "../../ui/words.ts";
import type { Shown } from "./use_clock.ts";
import { partName } from "./clock_words.ts";
import type { Deed, Detail } from "../../state/clock.ts";

const words: Readonly<Record<string, string>> = {
  start: "start",
  pause: "pause",
  "go-on": "going on",
  add: "time",
  jump: "going to a stretch",
  "last-call": "last call",
  stop: "end",
};

/** The day of the class where it is not today's; null also while that is not known, for the clock comes first. */
function useOtherDay(classId: string | undefined): string | null {
  useEffect(() => {
    gym.want();
    if (classId !== undefined) classOf(classId).want();
  }, [classId]);
  const today = gym.now.value.value?.today;
  const date = classId === undefined ? null : (classOf(classId).now.value.value?.class.date ?? null);
  return today === undefined || date === today ? null : date;
}

function Act(props: {
  readonly shown: Shown;
  readonly deed: Deed;
  readonly detail?: Detail;
  readonly first?: boolean;
  /** What it is called where the words on it do not tell it from others. */
  readonly label?: string;
  readonly children: string;
}) {
  const { shown, deed, detail } = props;
  const otherDay = useOtherDay(shown.clock?.class);
  const kind = props.first ? "first act" : "act";
  const disabled = shown.watch.underWay.value !== null;
  const go = () => {
    shown.voice.wake();
    shown.watch.act(deed, detail);
  };
  if (deed === "start" && otherDay !== null)
    return (
      <TwoTaps
        first={props.children}
        {...(props.label === undefined ? {} : { label: props.label })}
        sure="Yes, start it"
        not="No"
        why={<p class="other-day">This is the class of {dayWords(otherDay)}, not of today. Start its clock now?</p>}
        kind={kind}
        disabled={disabled}
        act={go}
      />
    );
  return (
    <button type="button" class={kind} disabled={disabled} aria-label={props.label} onClick={go}>
      {props.children}
    </button>
  );
}

/** The one thing that is most likely to be done next. */
export function MainAct({ shown }: { readonly shown: Shown }) {
  const state = shown.moment?.state ?? "ready";
  if (state === "running")
    return (
      <Act shown={shown} deed="pause" first>
        Pause
      </Act>
    );
  if (state === "paused")
    return (
      <Act shown={shown} deed="go-on" first>
        Go on
      </Act>
    );
  return (
    <Act shown={shown} deed="start" first>
      {state === "over" ? "Start again" : "Start"}
    </Act>
  );
}

/** On to the next stretch: what a coach says who does not wait for the end of this one. */
export function NextAct({ shown }: { readonly shown: Shown }) {
  const { clock, moment } = shown;
  const next = clock && moment ? clock.cues[moment.index + 1] : undefined;
  if (!next || !moment || (moment.state !== "running" && moment.state !== "paused")) return null;
  const name = next.kind === "count-in" ? `count-in, ${next.name}` : partName(next);
  return (
    <Act shown={shown} deed="jump" detail={{ cue: next.id }}>
      {`Next: ${name}`}
    </Act>
  );
}

/** More or less time for the stretch that runs, and the last call. */
export function TimeActs({ shown }: { readonly shown: Shown }) {
  const { moment, clock } = shown;
  if (moment?.state !== "running" && moment?.state !== "paused") return null;
  const open = moment.cue?.ends === "on-word";
  const called = clock?.last_call_ms !== null && clock?.at?.cue === moment.index;
  return (
    <>
      <Act shown={shown} deed="add" detail={{ seconds: -30 }}>
        30 s less
      </Act>
      <Act shown={shown} deed="add" detail={{ seconds: 30 }}>
        30 s more
      </Act>
      <Act shown={shown} deed="add" detail={{ seconds: 60 }}>
        1 min more
      </Act>
      {moment.cue?.kind === "work" && !called ? (
        <Act shown={shown} deed="last-call">
          {open && moment.left === null ? "Last call: one more minute" : "Last call"}
        </Act>
      ) : null}
    </>
  );
}

/** Takes back what was done last. */
export function TakeBack({ shown }: { readonly shown: Shown }) {
  const last = shown.clock?.last_act;
  if (!last) return null;
  return (
    <Act shown={shown} deed="undo">
      {`Take back: ${words[last.act] ?? last.act}`}
    </Act>
  );
}

export { Act };

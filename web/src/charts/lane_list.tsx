import { memo } from "preact/compat";
import { useMemo } from "preact/hooks";

import { laneHeight, type Axis } from "./axis.ts";
import { kinds } from "./kinds.ts";
import { stepAt, type Lane } from "./lanes.ts";
import { lanePaths } from "./paths.ts";
import { textureOf } from "./textures.tsx";

interface LaneListProps {
  readonly lanes: readonly Lane[];
  readonly axis: Axis;
  /** A sentence per person, for whoever does not see the lane. */
  readonly sentences: ReadonlyMap<string, string>;
  readonly ranges: ReadonlyMap<string, string>;
  readonly chosen: string | null;
  readonly lit: ReadonlySet<string>;
  readonly choose: (id: string, line: number | null) => void;
}

/** One person's hour. */
const LanePicture = memo(function LanePicture({ lane, axis, height }: { readonly lane: Lane; readonly axis: Axis; readonly height: number }) {
  const paths = useMemo(() => lanePaths(lane, axis, height), [lane, axis, height]);
  const middle = height / 2;
  return (
    <svg class="lane-picture" width={axis.width} height={height} aria-hidden="true" focusable="false">
      {axis.ticks.map((second) => (
        <path key={second} d={`M${axis.at(second)} 0v${height}`} class="grid" />
      ))}
      {kinds.map((kind) => {
        const path = paths.get(kind);
        return path && <path key={kind} d={path} fill={textureOf(kind)} class="bit" />;
      })}
      {lane.finishes.filter((finish) => finish.middle > axis.from && finish.middle <= axis.to).map((finish, index) => (
        <g key={index} class="finish">
          <path d={`M${axis.at(finish.early)} ${middle}H${axis.at(finish.late)}`} />
          <path d={`M${axis.at(finish.middle)} 2v${height - 4}`} />
        </g>
      ))}
    </svg>
  );
});

/**
 * One lane per person over the time of the class. The lanes are one stop of the Tab key; arrows, Home and End move
 * between them, and the one in focus is chosen.
 */
export function LaneList({ lanes, axis, sentences, ranges, chosen, lit, choose }: LaneListProps) {
  const height = laneHeight(lanes.length);
  const stop = chosen !== null && lanes.some((lane) => lane.id === chosen) ? chosen : lanes[0]?.id;
  const moved = (event: KeyboardEvent): void => {
    const rows = [...(event.currentTarget as HTMLElement).querySelectorAll<HTMLElement>("[role=option]")];
    const at = rows.findIndex((row) => row === document.activeElement);
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: rows.length - 1 }[event.key];
    if (to === undefined || at < 0) return;
    event.preventDefault();
    rows[Math.min(Math.max(to, 0), rows.length - 1)]?.focus();
  };
  return (
    <div class="lanes" role="listbox" aria-label="One lane per person over the class" onKeyDown={moved}>
      {lanes.map((lane) => (
        <div
          key={lane.id}
          role="option"
          aria-selected={lane.id === chosen}
          aria-label={`${lane.name} ${ranges.get(lane.id) ?? ""}. ${sentences.get(lane.id) ?? ""}`}
          tabIndex={lane.id === stop ? 0 : -1}
          data-person={lane.id}
          class={`lane${lane.id === chosen ? " lane-chosen" : ""}${lit.has(lane.id) ? " lane-lit" : ""}`}
          onFocus={() => {
            choose(lane.id, null);
          }}
          onClick={(event) => {
            const picture = event.currentTarget.querySelector("svg");
            const from = picture?.getBoundingClientRect().left ?? 0;
            choose(lane.id, event.detail > 0 ? (stepAt(lane, axis.second(event.clientX - from))?.line ?? null) : null);
          }}
          onMouseEnter={() => {
            choose(lane.id, null);
          }}
        >
          <span class="lane-name">{lane.name}</span>{" "}
          <LanePicture lane={lane} axis={axis} height={height} />
          <span class="lane-range">{ranges.get(lane.id)}</span>
        </div>
      ))}
    </div>
  );
}

import type { Axis } from "./axis.ts";
import type { ClassTime } from "../model/rehearsal.ts";
import { clockText } from "./words.ts";
import "./class_bar.css";

/** A stretch of the class with a name, in seconds from its start. */
export interface Stretch {
  readonly name: string;
  readonly from: number;
  readonly to: number;
}

interface ClassBarProps {
  readonly timetable: ClassTime;
  readonly axis: Axis;
  /** What stands within the warm-up's box, one after the other. */
  readonly drills?: readonly Stretch[];
}

const barHeight = 40;
const drillHeight = 8;

/** Whether a box's name fits into it, at about seven pixels a letter. */
const fits = (name: string, width: number): boolean => name.length * 7 + 12 <= width;

/** Ticks at the edges lean inwards. */
function tickPlace(x: number, width: number): string {
  if (x < 8) return "tick-first";
  return x > width - 8 ? "tick-last" : "";
}

/** The hour: its boxes in order, the minutes below, the end of the class, and how late it may get. */
export function ClassBar({ timetable, axis, drills = [] }: ClassBarProps) {
  const { boxes, planned_s, p50_s, p90_s } = timetable;
  const sees = (second: number): boolean => second > axis.from && second <= axis.to;
  return (
    <svg class="class-bar" width={axis.width} height={barHeight + 20} aria-hidden="true" focusable="false">
      {boxes.map((box, index) => {
        const x = axis.at(box.start_p50_s);
        const width = Math.max(0, axis.at(box.end_p50_s) - x);
        if (width === 0) return null;
        const tells = fits(box.name, width);
        return (
          <g key={index}>
            <title>{`${box.name}: ${clockText(box.start_p50_s)} to ${clockText(box.end_p50_s)}`}</title>
            <rect x={x} y={0} width={width} height={barHeight} class={`box ${box.kind === "work" ? "box-work" : "box-other"}`} />
            {(tells || width >= 26) && (
              <text x={x + width / 2} y={barHeight / 2} class="box-name">
                {tells ? box.name : `${box.name.slice(0, Math.max(1, Math.floor((width - 14) / 7)))}…`}
              </text>
            )}
          </g>
        );
      })}
      {drills.map((drill) => {
        const x = axis.at(drill.from);
        const width = axis.at(drill.to) - x;
        return width > 0 ? (
          <rect key={drill.from} x={x} y={barHeight - drillHeight} width={width} height={drillHeight} class="drill">
            <title>{`${drill.name}: ${clockText(drill.from)} to ${clockText(drill.to)}`}</title>
          </rect>
        ) : null;
      })}
      {p90_s > p50_s && sees(p90_s) && (
        <rect x={axis.at(p50_s)} y={8} width={axis.at(p90_s) - axis.at(p50_s)} height={barHeight - 16} class="box-late" />
      )}
      {planned_s !== null && sees(planned_s) && (
        <path d={`M${axis.at(planned_s) - 1} 0v${barHeight + 4}`} class={p90_s > planned_s ? "class-end class-end-passed" : "class-end"} />
      )}
      {axis.ticks.map((second) => (
        <text key={second} x={axis.at(second)} y={barHeight + 16} class={`tick ${tickPlace(axis.at(second), axis.width)}`}>
          {second / 60}
        </text>
      ))}
    </svg>
  );
}

import { useEffect, useState } from "preact/hooks";
import { classes, gym } from "../../state/gym.ts";
import type { Route } from "../../state/route.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { ClockWall } from "../clock/clock_wall.tsx";
import { EmergencyButton } from "../floor/emergency.tsx";
import { BoardOnWall } from "./board_on_wall.tsx";
import { ResultsOnWall } from "./results_on_wall.tsx";
import { useClock } from "../clock/use_clock.ts";
import "../floor/floor.css";
import "./screen.css";

type Side = "board" | "clock" | "results";
const sides: readonly (readonly [Side, string])[] = [
  ["board", "Board"],
  ["clock", "Clock"],
  ["results", "Results"],
];

/** What the class is at: before it the board, then the clock, after it the results. */
function useSideOfNow(id: string): Side {
  const shown = useClock(id, "still");
  const state = shown?.clock?.state ?? "ready";
  if (state === "running" || state === "paused") return "clock";
  return state === "over" ? "results" : "board";
}

function Choice({ side, held, choose }: { readonly side: Side; readonly held: Side | null; readonly choose: (side: Side | null) => void }) {
  return (
    <div class="screen-foot no-print">
      <div class="row" role="group" aria-label="On this screen">
        {sides.map(([name, words]) => (
          <button
            key={name}
            type="button"
            aria-pressed={side === name}
            onClick={() => {
              choose(name);
            }}
          >
            {words}
          </button>
        ))}
        <button
          type="button"
          aria-pressed={held === null}
          onClick={() => {
            choose(null);
          }}
        >
          By itself
        </button>
      </div>
      <EmergencyButton />
    </div>
  );
}

function ScreenOf({ id }: { readonly id: string }) {
  const now = useSideOfNow(id);
  const [held, setHeld] = useState<Side | null>(null);
  const side = held ?? now;
  useEffect(() => {
    classes.want();
  }, []);
  return (
    <div class="screen">
      {side === "clock" ? <ClockWall id={id} acts={false} /> : null}
      {side === "board" ? <BoardOnWall /> : null}
      {side === "results" ? <ResultsOnWall id={id} /> : null}
      <Choice side={side} held={held} choose={setHeld} />
    </div>
  );
}

/** What hangs on the wall: of the next class the board, the clock, the results, each when it is time, with nothing to enter. */
export function ScreenView({ at }: { readonly at: Route }) {
  return (
    <LookedAt
      at={gym}
      show={({ next_class }) => {
        const id = at.view === "clock" && at.id !== null ? at.id : next_class;
        return id === null ? <p>The gym has no class on a day to come.</p> : <ScreenOf key={id} id={id} />;
      }}
    />
  );
}

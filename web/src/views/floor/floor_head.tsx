import { useEffect } from "preact/hooks";
import { route, type Route } from "../../state/route.ts";
import { classOf } from "../../state/gym.ts";
import { shortDay } from "../../ui/words.ts";
import { EmergencyButton } from "./emergency.tsx";
import { Waiting } from "./waiting.tsx";
import "./floor.css";

const stops: readonly (readonly [view: Route["view"], path: string, words: string])[] = [
  ["next-class", "/class/*", "Class"],
  ["arrivals", "/arrivals/*", "Arrivals"],
  ["remote", "/clock/*/remote", "Clock"],
  ["runners", "/runners/*", "Runners"],
  ["scores", "/scores/*", "Scores"],
  ["results", "/results/*", "Results"],
];

/** Where to on the floor. */
export function FloorLinks({ classId }: { readonly classId: string }) {
  return (
    <nav class="floor-stops no-print" aria-label="This class">
      {stops.map(([view, path, words]) => (
        <a key={view} href={path.replace("*", classId)} aria-current={route.value.view === view ? "page" : undefined}>
          {words}
        </a>
      ))}
    </nav>
  );
}

/** What stands above every view of the floor: where to, the emergency card, what waits on this device. */
export function FloorHead({ classId, title }: { readonly classId: string; readonly title: string }) {
  const known = classOf(classId);
  useEffect(() => {
    known.want();
  }, [known]);
  const gymClass = known.now.value.value?.class;
  return (
    <>
      <FloorLinks classId={classId} />
      <div class="floor-title">
        <h1>
          {title}
          {gymClass ? (
            <span class="soft small floor-when">
              {" "}
              {[gymClass.date ? shortDay(gymClass.date) : gymClass.id, gymClass.start].filter(Boolean).join(", ")}
            </span>
          ) : null}
        </h1>
        <EmergencyButton />
      </div>
      <Waiting />
    </>
  );
}

import type { Stretch } from "../../charts/class_bar.tsx";
import { clockText } from "../../charts/words.ts";
import type { FitPlan } from "../../model/fits.ts";
import type { ChangeOver, KitMove } from "../../model/hour_plan.ts";
import type { Box } from "../../model/rehearsal.ts";
import type { Drill, WarmUpPlan } from "../../model/warm_up.ts";
import { count } from "../../ui/words.ts";

/** A share in hundredths; the number and its sign stay on one line. */
export const percent = (share: number): string => `${Math.round(100 * share)}\u00a0%`;

/** Who does what, as text to send: one line per person, nothing of what anybody avoids. */
export function fitText(plan: FitPlan): string {
  return plan.pieces
    .filter((piece) => piece.intent !== "")
    .map((piece) =>
      [
        `${piece.piece} (${piece.intent})`,
        ...piece.people.map(({ name, does }) => `${name}: ${does.length > 0 ? does.join(", ") : "as written"}`),
      ].join("\n"),
    )
    .join("\n\n");
}

/** The drills one after the other, from where the warm-up's box begins; none where the hour has no such box. */
export function drillStretches(drills: readonly Drill[], boxes: readonly Box[]): readonly Stretch[] {
  const box = boxes.find((each) => each.kind === "warm-up");
  if (!box) return [];
  let at = box.start_p50_s;
  return drills.map((drill) => ({ name: drill.name, from: at, to: (at += drill.seconds) }));
}

/** Names of needs by their places, each once. */
export function needNames(places: readonly number[], plan: WarmUpPlan): readonly string[] {
  return [...new Set(places.map((place) => plan.needs[place]?.name ?? ""))].filter(Boolean);
}

/** Who does something else in some drill: action words, and drill by drill what they do. */
export interface OtherWay {
  readonly person: string;
  readonly action: string;
  readonly drills: readonly string[];
}

export function otherWays(drills: readonly Drill[]): readonly OtherWay[] {
  const ways = new Map<string, { person: string; action: string; drills: string[] }>();
  for (const drill of drills)
    for (const { person, action, drill: other } of drill.instead) {
      const way = ways.get(person) ?? { person, action, drills: [] };
      way.drills.push(`${other === "" ? "the drill before again" : other} for ${drill.name}`);
      ways.set(person, way);
    }
  return [...ways.values()];
}

/** '4 x Kettlebell 16 kg, 2 x Mat' of the lots that have any of `part`. */
function lots(kit: readonly KitMove[], part: "stays" | "fetched" | "put_away"): string {
  return kit
    .filter((move) => move[part] > 0)
    .map((move) => `${move[part]} x ${move.name}`)
    .join(", ");
}

/** What happens to the kit before one piece, act by act; empty where nothing is to be done. */
export function changeWords(change: ChangeOver): readonly string[] {
  const first = change.from === "";
  const acts: readonly (readonly [string, string])[] = [
    ["stays", lots(change.kit, "stays")],
    [first ? "set out" : "fetch", lots(change.kit, "fetched")],
    ["put away", lots(change.kit, "put_away")],
  ];
  return [
    ...acts.filter(([, what]) => what !== "").map(([act, what]) => `${act} ${what}`),
    ...change.kit.filter((move) => move.short_by > 0).map((move) => `${count(move.short_by, "person shares", "people share")} ${move.name}`),
    ...(change.bars_reloaded > 0 ? [`${count(change.bars_reloaded, "bar gets", "bars get")} another load`] : []),
    ...(!first && change.seconds > 0 ? [`about ${clockText(change.seconds)}`] : []),
  ];
}

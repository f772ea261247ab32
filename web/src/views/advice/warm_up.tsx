import { clockText } from "../../charts/words.ts";
import type { Drill, WarmUpPlan } from "../../model/warm_up.ts";
import { listWords, sentence } from "../../ui/words.ts";
import { needNames, otherWays, percent } from "./advice_words.ts";

function Drills({ drills, plan }: { readonly drills: readonly Drill[]; readonly plan: WarmUpPlan }) {
  let at = 0;
  return (
    <ol class="plain drills">
      {drills.map((drill) => {
        const start = at;
        at += drill.seconds;
        const needs = needNames(drill.prepares, plan);
        return (
          <li key={drill.drill}>
            <span class="at">{clockText(start)}</span>
            <div>
              <p>
                <strong>{drill.name}</strong>{" "}
                <span class="soft">
                  {clockText(drill.seconds)}, {drill.phase}
                  {drill.on_floor ? ", on the floor" : ""}
                </span>
              </p>
              <p class="small">
                {drill.how} Say: “{drill.say}”
              </p>
              {needs.length > 0 && <p class="small soft">For {listWords(needs)}</p>}
            </div>
          </li>
        );
      })}
    </ol>
  );
}

const inShort = (drills: readonly Drill[]): string =>
  drills.length === 0 ? "no drill fits" : drills.map((drill) => `${drill.name} (${clockText(drill.seconds)})`).join("; ");

/** The warm-up for the board: drill by drill, what it leaves, who does what instead, and for whoever comes late. */
export function WarmUp({ plan }: { readonly plan: WarmUpPlan }) {
  const { together, late } = plan;
  const others = otherWays(together.drills);
  const left = needNames(together.unprepared, plan);
  return (
    <>
      <p>
        {clockText(together.planned_s)} of {clockText(together.asked_s)}; prepares {percent(together.prepared_share)} of what
        the board asks for.
      </p>
      {plan.notes.map((note) => (
        <p key={note} class="small">
          {sentence(note)}
        </p>
      ))}
      <Drills drills={together.drills} plan={plan} />
      {left.length > 0 && <p>Not prepared: {listWords(left)}.</p>}
      {others.length > 0 && (
        <ul class="plain tight" aria-label="Who does what instead">
          {others.map(({ person, action, drills }) => (
            <li key={person} class="action">
              <strong>{person}</strong>
              {action === "" ? "" : `, ${action}`}: {drills.join("; ")}
            </li>
          ))}
        </ul>
      )}
      <p class="small">
        <strong>Comes late</strong>: {inShort(late.drills)}
      </p>
    </>
  );
}

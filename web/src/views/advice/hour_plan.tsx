import { clockText } from "../../charts/words.ts";
import type { HourPlan } from "../../model/hour_plan.ts";
import { sentence } from "../../ui/words.ts";
import { changeWords, percent } from "./advice_words.ts";

/** What to cut first when the class is late, each on top of those before it, and the kit between the pieces. */
export function HourPlanView({ plan }: { readonly plan: HourPlan }) {
  const changes = plan.changes.map((change) => ({ to: change.to, words: changeWords(change) })).filter(({ words }) => words.length > 0);
  return (
    <>
      {plan.cuts.length === 0 ? (
        <p>Nothing on this board can be cut that would give the class time.</p>
      ) : (
        <ol class="cuts">
          {plan.cuts.map((cut) => (
            <li key={cut.cut}>
              <strong>{sentence(cut.cut)}</strong>
              <span class="small">
                {" "}
                gives {clockText(cut.gives_s)}; then nine classes in ten are over after {clockText(cut.end_p90_s)}, with{" "}
                {percent(cut.work_left)} of the work
              </span>
            </li>
          ))}
        </ol>
      )}
      {changes.length > 0 && (
        <dl class="change-overs">
          {changes.map(({ to, words }) => (
            <div key={to}>
              <dt>Before {to}</dt>
              <dd>{words.join("; ")}</dd>
            </div>
          ))}
        </dl>
      )}
    </>
  );
}

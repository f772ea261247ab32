import { clockText } from "../../charts/words.ts";
import type { Change, RepairPlan, Target } from "../../model/repairs.ts";
import { aimText, homeText } from "./repair_words.ts";

interface TargetsProps {
  readonly plan: RepairPlan;
  readonly stale: boolean;
  readonly take: (change: Change) => void;
}

function Cap({ target, stale, take }: { readonly target: Target } & Omit<TargetsProps, "plan">) {
  const { cap } = target;
  if (cap === null) return null;
  const { text } = cap;
  return (
    <p class="cap-target">
      <span>
        <strong>cap {clockText(cap.seconds)}</strong> <span class="soft">{homeText(cap)}</span>
      </span>
      {text !== null && (
        <button
          type="button"
          disabled={stale}
          onClick={() => {
            take({ words: `cap ${clockText(cap.seconds)} for ${target.name}`, lines: [], text });
          }}
        >
          Write the cap
        </button>
      )}
    </p>
  );
}

/** By when most are home and what each level may aim at, piece by piece. */
export function Targets({ plan, stale, take }: TargetsProps) {
  if (plan.targets.length === 0) return null;
  return (
    <details class="comparison">
      <summary>Cap and targets to write</summary>
      {plan.targets.map((target) => (
        <div key={target.piece} class="target">
          <h4>{target.name}</h4>
          <Cap target={target} stale={stale} take={take} />
          <div class="wide" tabIndex={0} role="region" aria-label={`Targets of ${target.name}`}>
            <table>
              <thead>
                <tr>
                  <th scope="col">who</th>
                  <th scope="col" class="number">
                    middle half
                  </th>
                  {target.levels.some((level) => level.first_round_s !== null) && (
                    <th scope="col" class="number">
                      first round by
                    </th>
                  )}
                </tr>
              </thead>
              <tbody>
                {target.levels.map((level) => (
                  <tr key={level.name}>
                    <th scope="row">{level.name}</th>
                    <td class="number">{aimText(target, level)}</td>
                    {level.first_round_s !== null && <td class="number">{clockText(level.first_round_s)}</td>}
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </div>
      ))}
    </details>
  );
}

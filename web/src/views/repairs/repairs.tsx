import { useId } from "preact/hooks";
import type { WhatIf } from "../../api/questions.ts";
import type { Repair, RepairPlan } from "../../model/repairs.ts";
import { Said } from "../../ui/said.tsx";
import { count, sentence } from "../../ui/words.ts";
import { AdviceHead } from "../advice/advice_head.tsx";
import { isStale } from "../advice/advice_search.ts";
import type { RepairSearch } from "./repair_search.ts";
import { figureNames, figuresOf, lineOf } from "./repair_words.ts";
import "./repairs.css";

interface RepairsProps {
  readonly search: RepairSearch;
  /** What would be asked now; null while the board cannot be rehearsed. */
  readonly now: WhatIf | null;
  /** Writes a proposal into the board's text. */
  readonly take: (repair: Repair) => void;
  /** Puts the text back as it was; null when it was changed further since. */
  readonly undo: (() => void) | null;
}

function Changes({ plan, repair }: { readonly plan: RepairPlan; readonly repair: Repair }) {
  const changed = figuresOf(plan.before, repair.after).filter(({ now, then }) => now !== then);
  return (
    <ul class="figures">
      {changed.map(({ name, now, then }) => (
        <li key={name}>
          <span class="soft">{name}</span> {now} <span aria-hidden="true">→</span>
          <span class="unseen">becomes</span> <strong>{then}</strong>
        </li>
      ))}
      <li>
        <span class="soft">line {repair.line}</span> <code>{lineOf(repair.text, repair.line)}</code>
      </li>
    </ul>
  );
}

function Proposal(props: { readonly plan: RepairPlan; readonly repair: Repair; readonly stale: boolean; readonly take: (repair: Repair) => void }) {
  const { plan, repair, stale, take } = props;
  const id = useId();
  return (
    <li class="proposal">
      <div>
        <p id={id} class="proposal-words">
          {sentence(repair.words)}
        </p>
        <Changes plan={plan} repair={repair} />
      </div>
      <button
        type="button"
        disabled={stale}
        aria-describedby={id}
        onClick={() => {
          take(repair);
        }}
      >
        Take it
      </button>
    </li>
  );
}

/** Doing nothing beside every proposal, all figures. */
function Comparison({ plan }: { readonly plan: RepairPlan }) {
  const rows = [["as it stands", plan.before] as const, ...plan.repairs.map((each, index) => [`${index + 1}`, each.after] as const)];
  return (
    <details class="comparison">
      <summary>Beside doing nothing, in full</summary>
      <div class="wide" tabIndex={0} role="region" aria-label="Doing nothing beside each proposal">
        <table>
          <thead>
            <tr>
              <th scope="col">proposal</th>
              {figureNames.map((name) => (
                <th key={name} scope="col" class="number">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, told]) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {figuresOf(plan.before, told).map((figure) => (
                  <td key={figure.name} class="number">
                    {figure.then}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="small soft">
        {plan.tried} small changes tried; these were rehearsed {plan.runs} times with the same people and the same luck.
      </p>
    </details>
  );
}

interface PlanProps {
  readonly plan: RepairPlan;
  readonly stale: boolean;
  readonly take: (repair: Repair) => void;
}

/** What to know of the hall first, then what would help. */
function Plan(props: PlanProps) {
  const { plan, stale, take } = props;
  return (
    <>
      {plan.notes.map((note) => (
        <Said key={note} weight="warning">
          {sentence(note)}
        </Said>
      ))}
      <Proposals plan={plan} stale={stale} take={take} />
    </>
  );
}

function Proposals(props: PlanProps) {
  const { plan, stale, take } = props;
  if (plan.tried === 0) return <p>Leave it as it is: no small change of this board would help this class.</p>;
  if (plan.repairs.length === 0)
    return (
      <p>
        Leave it as it is: of {count(plan.tried, "small change", "small changes")} none makes this class better by more than
        it costs to explain.
      </p>
    );
  return (
    <>
      <ol class="proposals">
        {plan.repairs.map((repair) => (
          <Proposal key={repair.text} plan={plan} repair={repair} stale={stale} take={take} />
        ))}
      </ol>
      <Comparison plan={plan} />
    </>
  );
}

/** Small changes of the board that would help, each beside doing nothing; taken by one act and undone by one. */
export function Repairs({ search, now, take, undo }: RepairsProps) {
  const id = useId();
  const found = search.found.value;
  const looking = search.looking.value;
  const taken = search.taken.value;
  const stale = isStale(found, now);
  return (
    <section class="help stack" aria-labelledby={id} aria-busy={looking}>
      <AdviceHead
        id={id}
        name="What would help"
        doing="Trying small changes of the board with the same people"
        act="Look for small changes"
        search={search}
        now={now}
      />
      {taken && (
        <div class="taken" role="status">
          <Said weight="fine">
            <p>
              <strong>Taken.</strong> {sentence(taken.repair.words)}
            </p>
            {undo ? (
              <button type="button" onClick={undo}>
                Undo it
              </button>
            ) : (
              <p class="small">The board was changed further since.</p>
            )}
          </Said>
        </div>
      )}
      {search.fault.value !== null && (
        <Said weight="problem" alert>
          {sentence(search.fault.value)}
        </Said>
      )}
      {found && stale && !taken && (
        <Said weight="note">These were worked out for the board and the class as they were. Look again before you take one.</Said>
      )}
      {found && !(stale && taken) && (
        <div class={stale ? "plan stack stale-plan" : "plan stack"}>
          <Plan plan={found.plan} stale={stale} take={take} />
        </div>
      )}
    </section>
  );
}

import { useEffect, useId } from "preact/hooks";
import type { WhatIf } from "../../api/questions.ts";
import type { HourPlan } from "../../model/hour_plan.ts";
import type { Change, Repair, RepairPlan } from "../../model/repairs.ts";
import { Said } from "../../ui/said.tsx";
import { count, sentence } from "../../ui/words.ts";
import { AdviceHead } from "../advice/advice_head.tsx";
import { isStale, type AdviceSearch } from "../advice/advice_search.ts";
import type { RepairSearch } from "./repair_search.ts";
import { cutFirstWords, figuresOf, isTooShort, lineOf, tooShortWords } from "./repair_words.ts";
import { Targets } from "./targets.tsx";
import "./repairs.css";

interface RepairsProps {
  readonly search: RepairSearch;
  /** What would be asked now; null while the board cannot be rehearsed. */
  readonly now: WhatIf | null;
  /** Writes a proposal into the board's text. */
  readonly take: (change: Change) => void;
  /** Puts the text back as it was; null when it was changed further since. */
  readonly undo: (() => void) | null;
  /** The search for what to cut: begun where no small change makes the class end in time. */
  readonly cuts: AdviceSearch<HourPlan>;
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
      {repair.rewritten ? (
        <li class="soft">the whole board is written anew</li>
      ) : (
        repair.lines.map((line) => (
          <li key={line}>
            <span class="soft">line {line}</span> <code>{lineOf(repair.text, line)}</code>
          </li>
        ))
      )}
    </ul>
  );
}

function Proposal(props: { readonly plan: RepairPlan; readonly repair: Repair; readonly stale: boolean; readonly take: (change: Change) => void }) {
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
              {figuresOf(plan.before, plan.before).map(({ name }) => (
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

/** Where the hour is too short whatever small change is made: what to cut first, looked for without being asked. */
function TooShort({ plan, cuts, now }: { readonly plan: RepairPlan; readonly cuts: AdviceSearch<HourPlan>; readonly now: WhatIf }) {
  const found = cuts.found.value;
  useEffect(() => {
    if (found === null || isStale(found, now)) cuts.lookUnasked(now);
  }, [plan]);
  return (
    <Said weight="warning">
      <p>{tooShortWords(plan)}</p>
      {found && !isStale(found, now) ? <p>{cutFirstWords(found.plan.cuts)}</p> : <p class="soft">Trying what to cut first…</p>}
    </Said>
  );
}

interface PlanProps {
  readonly plan: RepairPlan;
  readonly stale: boolean;
  readonly take: (change: Change) => void;
}

/** What to know of the hall first, then what would help. */
function Plan(props: PlanProps) {
  return (
    <>
      {props.plan.notes.map((note) => (
        <Said key={note} weight="warning">
          {sentence(note)}
        </Said>
      ))}
      <Proposals {...props} />
    </>
  );
}

function Proposals({ plan, stale, take }: PlanProps) {
  if (plan.repairs.length === 0 && isTooShort(plan)) return <Targets plan={plan} stale={stale} take={take} />;
  if (plan.repairs.length === 0)
    return (
      <>
        <p>
          {plan.tried === 0
            ? "Leave it as it is: no small change of this board would help this class."
            : `Leave it as it is: of ${count(plan.tried, "small change", "small changes")} none makes this class better by more than it costs to explain.`}
        </p>
        <Targets plan={plan} stale={stale} take={take} />
      </>
    );
  return (
    <>
      <ol class="proposals">
        {plan.repairs.map((repair) => (
          <Proposal key={repair.text} plan={plan} repair={repair} stale={stale} take={take} />
        ))}
      </ol>
      <Comparison plan={plan} />
      <Targets plan={plan} stale={stale} take={take} />
    </>
  );
}

/** Small changes of the board that would help, each beside doing nothing; taken by one act and undone by one. */
export function Repairs({ search, now, take, undo, cuts }: RepairsProps) {
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
          {now && !stale && isTooShort(found.plan) ? <TooShort plan={found.plan} cuts={cuts} now={now} /> : null}
          <Plan plan={found.plan} stale={stale} take={take} />
        </div>
      )}
    </section>
  );
}

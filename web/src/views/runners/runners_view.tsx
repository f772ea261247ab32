import { dueOf, outWith, runnerPath, sortOut, type Out, type RunLength, type Runner } from "../../model/runners.ts";
import { clock } from "../../model/scores.ts";
import { runnersAskedAt, runnersOf, runsOf } from "../../state/gym.ts";
import { sender } from "../../state/sender.ts";
import { LookedAt } from "../../ui/looked_at.tsx";
import { Said } from "../../ui/said.tsx";
import { useNow } from "../../ui/use_now.ts";
import { count, listWords } from "../../ui/words.ts";
import { FloorHead } from "../floor/floor_head.tsx";

function seen(classId: string, runner: Runner, act: "out" | "in"): void {
  sender.send({
    path: runnerPath(classId),
    how: "POST",
    body: { person: runner.id, act },
    words: `${runner.name}: ${act}`,
    timed: true,
  });
}

const dueWords = { running: "on the run", due: "due about now", late: "LATE" } as const;

const expectedWords = (run: RunLength | null): string =>
  run === null ? "does not run today" : `back after ${clock(run.p10_s)} to ${clock(run.p90_s)}`;

function OutButton({ out, now, classId }: { readonly out: Out; readonly now: number; readonly classId: string }) {
  const due = dueOf(out, now);
  return (
    <li>
      <button
        type="button"
        class={due}
        onClick={() => {
          seen(classId, out.runner, "in");
        }}
      >
        <strong>{out.runner.name}</strong>
        <span>
          {clock((now - (out.since ?? now)) / 1000)} <span class="mark">{dueWords[due]}</span>
        </span>
        <span class="small">{expectedWords(out.run)}; tap when back</span>
      </button>
    </li>
  );
}

function Board(props: { readonly classId: string; readonly list: readonly Runner[]; readonly lengths: readonly RunLength[] }) {
  const { classId } = props;
  const now = useNow();
  const outs = outWith({ ...props, asked: runnersAskedAt.get(classId) ?? now }, sender.outbox.value);
  const out = sortOut(outs, now);
  const late = out.filter((each) => dueOf(each, now) === "late");
  return (
    <>
      {late.length > 0 ? (
        <Said weight="problem" alert>
          {listWords(late.map((each) => each.runner.name))} should be back by now: send somebody along the route.
        </Said>
      ) : null}
      <section aria-labelledby="out">
        <h2 id="out">Out: {count(out.length, "person", "people")}</h2>
        <ul class="plain names">
          {out.map((each) => (
            <OutButton key={each.runner.id} out={each} now={now} classId={classId} />
          ))}
        </ul>
      </section>
      <section class="stack" aria-labelledby="inside">
        <h2 id="inside">Inside</h2>
        <p class="soft small">Tap a name as they leave through the door.</p>
        <ul class="plain names">
          {outs
            .filter((each) => each.since === null)
            .sort((a, b) => a.runner.name.localeCompare(b.runner.name))
            .map(({ runner, run }) => (
              <li key={runner.id}>
                <button
                  type="button"
                  onClick={() => {
                    seen(classId, runner, "out");
                  }}
                >
                  <strong>{runner.name}</strong>
                  <span class="small">{expectedWords(run)}</span>
                </button>
              </li>
            ))}
        </ul>
      </section>
    </>
  );
}

/** Who is out on the run and when they should be back. */
export function RunnersView({ id }: { readonly id: string }) {
  return (
    <div class="floor">
      <FloorHead classId={id} title="Runners" />
      <LookedAt
        at={runsOf(id)}
        show={({ runs }) => (
          <LookedAt at={runnersOf(id)} show={({ runners }) => <Board classId={id} list={runners} lengths={runs} />} />
        )}
      />
    </div>
  );
}

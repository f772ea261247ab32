import type { DrawnMovement } from "./kinds.ts";
import type { Rehearsal, RehearsedPiece, RehearsedStep } from "../model/rehearsal.ts";
import { clockText, limiterText, rangeText, scoreText } from "./words.ts";

interface PersonPanelProps {
  readonly rehearsal: Rehearsal;
  readonly person: string;
  readonly movements: ReadonlyMap<string, DrawnMovement>;
  readonly show: (line: number) => void;
}

/** The steps of one line summed over its rounds. */
interface LineSum {
  readonly line: number;
  readonly version: string;
  readonly load_kg: number | null;
  readonly rounds: number;
  readonly work_s: number;
  readonly rest_s: number;
  readonly wait_s: number;
  readonly sets: number;
}

export function sumsByLine(steps: readonly RehearsedStep[]): readonly LineSum[] {
  const sums = new Map<string, LineSum>();
  for (const step of steps) {
    if (step.share < 0.5) continue;
    const key = `${step.line} ${step.version}`;
    const before = sums.get(key);
    sums.set(key, {
      line: step.line,
      version: step.version,
      load_kg: step.load_kg,
      rounds: (before?.rounds ?? 0) + 1,
      work_s: (before?.work_s ?? 0) + step.work_s,
      rest_s: (before?.rest_s ?? 0) + step.rest_s,
      wait_s: (before?.wait_s ?? 0) + step.wait_s,
      sets: (before?.sets ?? 0) + step.sets,
    });
  }
  return [...sums.values()];
}

function PieceNumbers({ piece, name, movements, show }: { readonly piece: RehearsedPiece; readonly name: string } & Pick<PersonPanelProps, "movements" | "show">) {
  return (
    <section class="piece-numbers">
      <h4>{name}</h4>
      <p>
        <strong>{rangeText(piece)}</strong>, middle {scoreText(piece, piece.p50)}; limited by {limiterText(piece.limiter)}
        {piece.wait_s >= 1 && <>; waits {clockText(piece.wait_s)}</>}
        {piece.capped >= 0.05 && <>; stopped by the cap in {Math.round(piece.capped * 100)} of 100 runs</>}.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">work</th>
            <th scope="col">rounds</th>
            <th scope="col">sets a round</th>
            <th scope="col">work</th>
            <th scope="col">rest</th>
            <th scope="col">wait</th>
          </tr>
        </thead>
        <tbody>
          {sumsByLine(piece.steps).map((sum) => (
            <tr key={`${sum.line} ${sum.version}`}>
              <th scope="row">
                <button
                  type="button"
                  class="line-link"
                  onClick={() => {
                    show(sum.line);
                  }}
                >
                  {movements.get(sum.version)?.name ?? (sum.version || "as written")}
                  {sum.load_kg !== null && ` ${sum.load_kg} kg`}
                </button>
              </th>
              <td>{sum.rounds}</td>
              <td>{(sum.sets / sum.rounds).toFixed(1)}</td>
              <td>{clockText(sum.work_s)}</td>
              <td>{clockText(sum.rest_s)}</td>
              <td>{clockText(sum.wait_s)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** The numbers of one lane: score range, limiter, waits and sets. */
export function PersonPanel({ rehearsal, person, movements, show }: PersonPanelProps) {
  const found = rehearsal.people.find((each) => each.id === person);
  if (!found) return null;
  return (
    <div class="person-panel">
      <h3>{found.name}</h3>
      {found.pieces.map((piece) => (
        <PieceNumbers
          key={piece.piece}
          piece={piece}
          name={rehearsal.pieces[piece.piece] ?? ""}
          movements={movements}
          show={show}
        />
      ))}
    </div>
  );
}
